// Whether the measurements of an entry's checks are logged so that a payer accepts them: unit, both test points, and
// for resistance whether the part was isolated.
import type { Reading } from "@/lib/domain/reading";
import type { JudgedReading } from "./current-readings";
import type { EvidenceEntry } from "./entry";
import { planOf } from "./entry-plan";
import type { EvidenceItem } from "./evidence-check";

type LogState = Pick<EvidenceItem, "state" | "foundIn" | "whatWouldFixIt" | "canStillBeHad">;

/** Does not apply to an entry that is proven by eye and hand alone. */
export function loggedReadings(entry: EvidenceEntry, current: readonly JudgedReading[]): LogState {
  const { requiredChecks, needsMeter } = planOf(entry);
  if (!needsMeter) return withoutMeter;
  const measured = current
    .map(({ reading }) => reading)
    .filter((reading) => requiredChecks.has(reading.check) && wasMeasured(reading));
  const gaps = measured.flatMap((reading) => gapsOf(reading).map((gap) => `reading ${reading.number}: ${gap}`));
  const isComplete = measured.length > 0 && gaps.length === 0;
  return {
    state: isComplete ? "in_place" : "missing",
    foundIn: isComplete ? measured.map(({ number }) => ({ kind: "reading", number })) : [],
    whatWouldFixIt:
      measured.length === 0
        ? "Record the measurements with mode, unit and test points."
        : `Complete ${gaps.join("; ")}.`,
    canStillBeHad: true,
  };
}

const withoutMeter: LogState = {
  state: "does_not_apply",
  foundIn: [],
  whatWouldFixIt: "This failure is shown without a meter.",
  canStillBeHad: false,
};

function wasMeasured({ outcome }: Reading): boolean {
  return outcome.kind === "number" || outcome.kind === "open" || outcome.kind === "short";
}

function gapsOf(reading: Reading): readonly string[] {
  const isOhms = reading.mode === "ohm" || reading.mode === "continuity";
  const needsPoints = isOhms || reading.mode === "volt_ac" || reading.mode === "volt_dc";
  return [
    ...(needsPoints && (reading.pointA === undefined || reading.pointB === undefined) ? ["both test points"] : []),
    ...(isOhms && reading.isolated === undefined ? ["part isolated or not"] : []),
    ...(reading.outcome.kind === "number" && reading.outcome.unit.trim() === "" ? ["unit"] : []),
  ];
}
