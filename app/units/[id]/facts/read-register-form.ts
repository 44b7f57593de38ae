import type { FieldProblem } from "@/app/_ui/error-summary";
import type { UnitRegisterValues } from "@/db/writes/coverage/unit-register";
import { type Day, readDay } from "@/lib/calendar/day";
import type { Unit } from "@/lib/domain/unit";
import type { FormRead } from "./read-facts-form";
import { registerDays } from "./register-days";

type Texts = Readonly<Record<string, string>>;

/** What the fields show for a unit, and what a form that nobody touched sends back. */
export function registerTexts(unit: Unit): Texts {
  const days = registerDays.map(({ field }) => [field, unit[field] ?? ""] as const);
  return {
    ...Object.fromEntries(days),
    use: unit.use,
    territory: unit.territory ?? "",
    ownerNumber: String(unit.ownerNumber),
  };
}

/**
 * What was changed in the form, or everything that is wrong with it, each with its field. A field that was left as it
 * was shown says nothing, so that what somebody else set meanwhile stays.
 * @param texts what was sent; `shown` holds what the form showed, as JSON
 * @param unit as it stands now
 */
export function readRegisterForm(
  texts: Texts,
  unit: Unit,
  today: Day,
): FormRead<{ readonly changes: Partial<UnitRegisterValues>; readonly by: string; readonly reason: string }> {
  const problems: FieldProblem[] = [];
  const isTouched = touchedOf(texts);
  const changes: { -readonly [Key in keyof UnitRegisterValues]?: UnitRegisterValues[Key] } = {};
  for (const { field, column, label } of registerDays) {
    if (!isTouched(field)) continue;
    const text = texts[field]?.trim() ?? "";
    const on = text === "" ? null : readDay(text);
    const problem = on === undefined ? `“${text}” is no day written YYYY-MM-DD.` : outOfOrder(on, unit, today);
    if (problem !== undefined) problems.push({ field, text: `${label}: ${problem}` });
    else changes[column] = on ?? null;
  }
  if (isTouched("use")) changes.use = texts.use === "commercial" ? "commercial" : "household";
  if (isTouched("territory")) {
    const code = texts.territory?.trim() ?? "";
    if (code !== "" && !/^[A-Z]{2}(-[A-Z0-9]{1,3})?$/.test(code))
      problems.push({
        field: "territory",
        text: `Where it stands: “${code}” is no code by ISO 3166, such as US or US-CA.`,
      });
    else changes.territory = code === "" ? null : code;
  }
  if (isTouched("ownerNumber")) {
    const number = Number(texts.ownerNumber);
    if (!Number.isInteger(number) || number < 1 || number > 99)
      problems.push({
        field: "ownerNumber",
        text: "Owner: write 1 for the first buyer, 2 after one transfer, and so on.",
      });
    else changes.owner_number = number;
  }
  const by = needed(texts, "registerBy", "Your name: say who enters this.", problems);
  const reason = needed(texts, "registerReason", "What shows it: name the paper or record.", problems);
  if (problems.length === 0 && Object.keys(changes).length === 0)
    problems.push({ text: "Nothing was changed: every field is as it was." });
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: { changes, by, reason } };
}

function touchedOf(texts: Texts): (field: string) => boolean {
  const shown = JSON.parse(texts.shown ?? "{}") as Texts; // written by the form itself; other text changes nothing but what is compared
  return (field) => field in texts && (texts[field]?.trim() ?? "") !== (shown[field] ?? "");
}

function outOfOrder(on: Day | null, { madeFrom, retiredOn }: Unit, today: Day): string | undefined {
  if (on === null) return undefined;
  if (on > today) return `${on} is still to come.`;
  if (madeFrom !== undefined && on < madeFrom)
    return `${on} lies before ${madeFrom}, the first day on which it can have been made. Check the serial too.`;
  return retiredOn !== undefined && on > retiredOn
    ? `${on} lies after ${retiredOn}, the day it left service.`
    : undefined;
}

function needed(texts: Texts, field: string, text: string, problems: FieldProblem[]): string {
  const given = texts[field]?.trim() ?? "";
  if (given === "") problems.push({ field, text });
  return given;
}
