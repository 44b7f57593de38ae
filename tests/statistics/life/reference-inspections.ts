import type { InspectionRow } from "@/lib/statistics/life/inspection-rows";
import { referenceRows } from "../../reference/read-reference";

/** Counts between inspections: 0 marks an open lower end, Inf an open upper one. */
function bounds(row: Readonly<Record<string, string>>): InspectionRow {
  return {
    entry: 0,
    after: Number(row.lower),
    by: row.upper === "Inf" ? Number.POSITIVE_INFINITY : Number(row.upper),
    count: Number(row.count),
  };
}

export const heatExchanger = (): InspectionRow[] => referenceRows("heat_exchanger").map(bounds);

export const alphaParticles = (sample: number): InspectionRow[] =>
  referenceRows("alpha_particle_grouped")
    .filter((row) => Number(row.sample) === sample)
    .map(bounds);

/** Each wheel was looked at once: cracked by then, or still sound. */
export const turbineWheels = (): InspectionRow[] =>
  referenceRows("turbine_wheel").map((row) => {
    const hours = Number(row.hundred_hours);
    const cracked = row.cracked === "1";
    return {
      entry: 0,
      after: cracked ? 0 : hours,
      by: cracked ? hours : Number.POSITIVE_INFINITY,
      count: Number(row.count),
    };
  });
