// Complaint, cause and correction put together from the record, for the technician to edit: facts only, in the order in
// which a payer reads them. Nothing here is stored until somebody has seen it.
import { causes } from "@/lib/domain/cause";
import { componentOf } from "@/lib/domain/components";
import type { JobRecord } from "@/lib/domain/job";
import { symptomOf } from "@/lib/domain/symptoms";
import type { JudgedReading } from "@/lib/evidence/current-readings";
import { isDecided } from "@/lib/evidence/decided";
import { checkOfReading } from "@/lib/evidence/own-check";
import { capitalised } from "@/lib/format/capitalised";
import { formatOutcome, formatRange } from "@/lib/format/format-reading";
import { failureWords } from "./shown-mode";
import type { Verdict } from "./verdict";

export interface Story {
  readonly complaint: string;
  readonly causeNote: string;
  readonly correction: string;
}

interface Told {
  readonly complaint: string;
  readonly symptom: string | undefined;
  readonly verdict: Verdict;
  readonly current: readonly JudgedReading[];
  readonly partLines: JobRecord["partLines"];
}

export function composedStory({ complaint, symptom, verdict, current, partLines }: Told): Story {
  return {
    complaint: complaint.trim() === "" ? sentence(symptomOf(symptom ?? "")?.name ?? "") : complaint.trim(),
    causeNote: [causeSentence(verdict, current), ...proofs(verdict, current)].filter((part) => part !== "").join(" "),
    correction: [replaced(partLines), afterwards(current)].filter((part) => part !== "").join(" "),
  };
}

function causeSentence(verdict: Verdict, current: readonly JudgedReading[]): string {
  switch (verdict.kind) {
    case "part": {
      const [first] = verdict.entries;
      const words = first === undefined ? verdict.why : failureWords(first, current);
      return sentence(`${componentOf(first?.component ?? "")?.name ?? ""}: ${words}`);
    }
    case "part first":
      return sentence(`${componentOf(verdict.component)?.name ?? verdict.component}: ${verdict.why}`);
    case "outside":
      return sentence(`${causes[verdict.cause].name}: ${verdict.why}`);
    case "no fault":
      return sentence(`No fault found: ${verdict.why}`);
    case "reseated":
    case "put right first":
      return sentence(verdict.why);
    case "open":
      return "";
  }
}

/** The readings that decide it, then the rest that decided something, each with what was expected. */
function proofs(verdict: Verdict, current: readonly JudgedReading[]): readonly string[] {
  const by = new Set(verdict.kind === "open" ? [] : verdict.by);
  const decided = current.filter(({ judgement }) => isDecided(judgement));
  const ordered = [...decided].sort((a, b) => Number(by.has(b.reading.number)) - Number(by.has(a.reading.number)));
  return ordered.length === 0 ? [] : [`${ordered.map(proof).join("; ")}.`];
}

function proof({ reading, judgement }: JudgedReading): string {
  const name = checkOfReading(reading)?.name ?? reading.check;
  const found =
    judgement.kind === "finding"
      ? judgement.finding.means
      : formatOutcome(reading.outcome).replace("Open (OL)", "open (OL)");
  const range = "range" in judgement ? judgement.range : undefined;
  const conditions = [
    range === undefined ? "" : `expected ${formatRange(range)}`,
    reading.commanded === true ? "step commanded" : "",
    reading.temperatureC === undefined ? "" : `at ${Math.round(reading.temperatureC * 10) / 10} °C`,
  ].filter((part) => part !== "");
  return `${name}: ${found}${conditions.length === 0 ? "" : ` (${conditions.join(", ")})`}`;
}

function replaced(partLines: JobRecord["partLines"]): string {
  const fitted = partLines.filter(({ role }) => role === "fitted");
  if (fitted.length === 0) return "No part was replaced.";
  return `Replaced ${fitted.map(({ description, partNumber, quantity }) => `${quantity > 1 ? `${quantity} × ` : ""}${description || "part"} ${partNumber}`).join(", ")}.`;
}

/** Only a test that was done, and only as it came out. */
function afterwards(current: readonly JudgedReading[]): string {
  const flow = current.find(({ reading }) => reading.check === "flow_test");
  return flow?.judgement.kind === "finding" && flow.judgement.finding.state === "good"
    ? `Drain test: ${flow.judgement.finding.means}.`
    : "";
}

function sentence(text: string): string {
  const trimmed = text.trim();
  if (trimmed === "") return "";
  return `${capitalised(trimmed)}${/[.!?]$/.test(trimmed) ? "" : "."}`;
}
