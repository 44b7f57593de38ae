// The readings of a machine of which it is known what is wrong: for walking sheets in tests and in the bench.
import type { Cause } from "@/lib/domain/cause";
import type { Reading, ReadingOutcome } from "@/lib/domain/reading";
import type { Check } from "@/lib/evidence/check";
import type { EvidenceEntry } from "@/lib/evidence/entry";
import { provingReadings } from "@/lib/evidence/proving-readings";
import type { PlanStep } from "@/lib/sheets/visit-plan";

export type Truth =
  /** The part failed as this entry describes. */
  | { readonly kind: "part"; readonly entry: EvidenceEntry }
  /** This check shows the cause outside the part. */
  | { readonly kind: "outside"; readonly cause: Cause; readonly shownBy: string }
  | { readonly kind: "nothing" };

/** What the step reads on such a machine; `repeats` are tests that fail as long as the complaint holds. */
export function toldReadings(truth: Truth, repeats: ReadonlySet<string>): (step: PlanStep) => readonly Reading[] {
  const proving = truth.kind === "part" ? provingReadings(truth.entry) : [];
  return ({ check, times }) => {
    const own = proving.filter((reading) => reading.check === check.key);
    const last = own.at(-1);
    if (last !== undefined) return Array.from({ length: times }, (_, index) => own[index] ?? last);
    if (truth.kind === "outside" && truth.shownBy === check.key)
      return [read(check, outsideOutcome(check, truth.cause))];
    if (truth.kind === "part" && repeats.has(check.key)) return [read(check, { kind: "finding", word: "none" })];
    if (truth.kind === "part" && check.key === "pump_voltage" && speaksAgainst(truth.entry, check.key))
      return [read(check, { kind: "number", value: 0, unit: "V" })];
    return Array.from({ length: times }, () => read(check, goodOutcome(check)));
  };
}

/** A board that sends nothing leaves the pump without voltage. */
function speaksAgainst({ contradictedBy }: EvidenceEntry, check: string): boolean {
  return contradictedBy.some(({ when }) =>
    (when.is === "any" ? when.of : [when]).some((one) => one.is === "good" && one.check === check),
  );
}

function goodOutcome(check: Check): ReadingOutcome {
  const word = Object.entries(check.findings).find(([, { state }]) => state === "good")?.[0];
  if (word !== undefined) return { kind: "finding", word };
  const range = rangeOf(check);
  const { low = 0, high = low * 2 + 1 } = range;
  return { kind: "number", value: (low + high) / 2, unit: range.unit ?? check.unit ?? "" };
}

function outsideOutcome(check: Check, cause: Cause): ReadingOutcome {
  const word = Object.entries(check.findings).find(([, finding]) => finding.cause === cause)?.[0];
  if (word !== undefined) return { kind: "finding", word };
  return { kind: "number", value: (rangeOf(check).high ?? 100) * 3, unit: rangeOf(check).unit ?? check.unit ?? "" };
}

interface Ends {
  readonly low?: number | undefined;
  readonly high?: number | undefined;
  readonly unit?: string;
}

function rangeOf({ general }: Check): Ends {
  return general.find(({ screensOnly }) => !screensOnly) ?? { low: 10, high: 20 };
}

function read(check: Check, outcome: ReadingOutcome): Reading {
  const isMeasured = outcome.kind === "number";
  const range = rangeOf(check);
  return {
    number: 0,
    check: check.key,
    pointA: isMeasured ? "a" : undefined,
    pointB: isMeasured ? "b" : undefined,
    mode: isMeasured ? (check.modes.find((mode) => mode !== "observation") ?? check.modes[0]) : "observation",
    outcome,
    power: check.energy,
    isolated: check.needs.includes("isolated") ? true : undefined,
    loadConnected: check.needs.includes("load") ? true : undefined,
    commanded: check.needs.includes("command") ? true : undefined,
    temperatureC: check.needs.includes("temperature") ? Math.min(25, (check.notAboveC ?? 30) - 5) : undefined,
    sheetLow: isMeasured ? range.low : undefined,
    sheetHigh: isMeasured ? range.high : undefined,
    sheetReference: isMeasured ? "model sheet" : undefined,
    note: undefined,
    technician: undefined,
    takenAt: undefined,
  };
}
