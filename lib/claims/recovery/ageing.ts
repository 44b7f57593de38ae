import { type Day, daysBetween } from "@/lib/calendar/day";

/** Ages of money in days, each with its last day; the last is open. Source: common practice of the trade, no source. */
const ageingBuckets = {
  unfiled: [7, 14, 21, 30],
  filed: [30, 45, 60],
  rejected: [7, 14, 30],
} as const;
export type AgeingKind = keyof typeof ageingBuckets;
const ageingKinds = Object.keys(ageingBuckets) as readonly AgeingKind[]; // Object.keys loses the key type

/** Money that waits since a day: unfiled since completion, filed since sending, rejected since the answer. */
export interface AgedMoney {
  readonly kind: AgeingKind;
  readonly since: Day;
  readonly cents: number;
}

export interface AgeingCell {
  readonly kind: AgeingKind;
  /** "0–7", "over 30". */
  readonly days: string;
  readonly cases: number;
  readonly cents: number;
}

/** Every bucket of every kind, empty ones too. What lies ahead of today counts as 0 days old. */
export function ageing(money: readonly AgedMoney[], today: Day): readonly AgeingCell[] {
  return ageingKinds.flatMap((kind) => {
    const ends: readonly number[] = ageingBuckets[kind];
    const placed = money
      .filter((each) => each.kind === kind)
      .map((each) => ({ cents: each.cents, bucket: bucketOf(ends, Math.max(0, daysBetween(each.since, today))) }));
    return [...ends, undefined].map((_, bucket) => {
      const here = placed.filter((each) => each.bucket === bucket);
      const cents = here.reduce((sum, each) => sum + each.cents, 0);
      return { kind, days: nameOf(ends, bucket), cases: here.length, cents };
    });
  });
}

function bucketOf(ends: readonly number[], days: number): number {
  const found = ends.findIndex((end) => days <= end);
  return found === -1 ? ends.length : found;
}

function nameOf(ends: readonly number[], bucket: number): string {
  const [before, end] = [ends[bucket - 1], ends[bucket]];
  if (end === undefined) return `over ${before ?? 0}`;
  return `${before === undefined ? 0 : before + 1}–${end}`;
}
