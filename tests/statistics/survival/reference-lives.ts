import type { LifeRow } from "@/lib/statistics/survival/life-rows";
import { referenceRows } from "../../reference/read-reference";

/** Lives of one open data set: which column is the exit age, which says failed, which the entry (none: from the start). */
export function referenceLives(
  name: string,
  columns: { readonly exit: string; readonly event: string; readonly entry?: string; readonly count?: string },
  keep: (row: Readonly<Record<string, string>>) => boolean = () => true,
): LifeRow[] {
  return referenceRows(name)
    .filter(keep)
    .map((row) => ({
      entry: columns.entry === undefined ? 0 : Number(row[columns.entry]),
      exit: Number(row[columns.exit]),
      event: Number(row[columns.event]) === 1,
      count: columns.count === undefined ? 1 : Number(row[columns.count]),
    }));
}

export const leukemia = (arm: "6-MP" | "control"): LifeRow[] =>
  referenceLives("leukemia_remission", { exit: "weeks", event: "status" }, (row) => row.arm === arm);

export const macs = (): LifeRow[] => referenceLives("macs_left_truncated", { entry: "W", exit: "T", event: "D" });

export const rossi = (): LifeRow[] =>
  referenceLives("rossi_left_truncated", { entry: "start", exit: "week", event: "arrest" });

export const generatorFans = (): LifeRow[] => referenceLives("genfan", { exit: "hours", event: "status" });

export const stoppedTest = (): LifeRow[] =>
  referenceLives("nist_8_4_1_weibull", { exit: "hours", event: "status", count: "count" });

export const bearingCages = (): LifeRow[] =>
  referenceLives("bearing_cage", { exit: "hours", event: "status", count: "count" });

export const ballBearings = (unit = 1): LifeRow[] =>
  referenceRows("ball_bearing_lz").map((row) => ({
    entry: 0,
    exit: Number(row.megacycles) * unit,
    event: true,
    count: 1,
  }));

/** Every age in another unit: results must follow. */
export function rescaled(rows: readonly LifeRow[], factor: number): LifeRow[] {
  return rows.map((row) => ({ ...row, entry: row.entry * factor, exit: row.exit * factor }));
}
