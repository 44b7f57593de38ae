import type { FieldProblem } from "@/app/_ui/error-summary";
import type { RepairSpanEntry, UnitFactValues } from "@/db/writes/coverage/unit-facts";
import { type Day, readDay } from "@/lib/calendar/day";

type Texts = Readonly<Record<string, string>>;

export type FormRead<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly FieldProblem[] };

/** The form of facts, or everything that is wrong with it, each with its field. */
export function readFactsForm(
  texts: Texts,
): FormRead<{ readonly facts: UnitFactValues; readonly by: string; readonly reason: string }> {
  const problems: FieldProblem[] = [];
  const day = dayReader(texts, problems);
  const facts: UnitFactValues = {
    firstUsedOn: day("firstUsedOn", "First used"),
    acquiredOn: day("acquiredOn", "Taken over by the present owner"),
    transferRegisteredOn: day("transferRegisteredOn", "Transfer registered"),
    exchangedOn: day("exchangedOn", "Handed over in exchange"),
    exchangedSerial: filled(texts.exchangedSerial),
    serialRemoved: texts.serialRemoved === "yes",
  };
  if (facts.acquiredOn && facts.transferRegisteredOn && facts.transferRegisteredOn < facts.acquiredOn)
    problems.push({
      field: "transferRegisteredOn",
      text: `Transfer registered: lies before ${facts.acquiredOn}, the day it was taken over.`,
    });
  if (facts.exchangedSerial !== undefined && facts.exchangedOn === undefined)
    problems.push({ field: "exchangedOn", text: "Handed over in exchange: give the day, since a serial is given." });
  const by = needed(texts, "by", "Your name: say who enters this.", problems);
  const reason = needed(texts, "reason", "What shows it: name the paper or record.", problems);
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: { facts, by, reason } };
}

export function readSpanForm(texts: Texts): FormRead<Omit<RepairSpanEntry, "unitId">> {
  const problems: FieldProblem[] = [];
  const day = dayReader(texts, problems);
  const fromOn = day("fromOn", "Out from");
  const untilOn = day("untilOn", "Back on");
  if (fromOn === undefined && problems.length === 0)
    problems.push({ field: "fromOn", text: "Out from: give the day." });
  if (untilOn === undefined && problems.length === 0)
    problems.push({ field: "untilOn", text: "Back on: give the day." });
  if (fromOn && untilOn && untilOn < fromOn)
    problems.push({ field: "untilOn", text: `Back on: lies before ${fromOn}.` });
  const source = needed(texts, "source", "What shows it: name the paper or record.", problems);
  const by = needed(texts, "spanBy", "Your name: say who enters this.", problems);
  if (problems.length > 0 || fromOn === undefined || untilOn === undefined) return { ok: false, problems };
  return { ok: true, value: { fromOn, untilOn, source, by } };
}

function dayReader(texts: Texts, problems: FieldProblem[]) {
  return (field: string, label: string): Day | undefined => {
    const text = filled(texts[field]);
    if (text === undefined) return undefined;
    const on = readDay(text);
    if (on === undefined) problems.push({ field, text: `${label}: “${text}” is no day written YYYY-MM-DD.` });
    return on;
  };
}

function needed(texts: Texts, field: string, text: string, problems: FieldProblem[]): string {
  const given = filled(texts[field]);
  if (given === undefined) problems.push({ field, text });
  return given ?? "";
}

function filled(text: string | undefined): string | undefined {
  const plain = text?.trim() ?? "";
  return plain === "" ? undefined : plain;
}
