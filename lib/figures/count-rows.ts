import { formatCount } from "@/lib/format/format-count";

export interface CountedThing {
  readonly key: string;
  readonly label: string;
  readonly count: number;
  readonly href?: string | undefined;
}

/** Counts on one axis from 0. */
export interface CountRows {
  readonly kind: "rows";
  readonly rows: readonly (CountedThing & { readonly at: number; readonly spoken: string })[];
  readonly ticks: readonly { readonly at: number; readonly label: string }[];
}

/** Most frequent first, ties by name. Counts of what was seen, not rates: nothing is divided by anything. */
export function countRows(things: readonly CountedThing[]): CountRows | { readonly kind: "nothing-counted" } {
  const largest = Math.max(0, ...things.map(({ count }) => count));
  if (largest === 0) return { kind: "nothing-counted" };
  const step = wholeStep(largest / 4);
  const max = step * Math.ceil(largest / step);
  const sorted = [...things].sort((a, b) => b.count - a.count || a.label.localeCompare(b.label, "en"));
  return {
    kind: "rows",
    rows: sorted.map((thing) => ({
      ...thing,
      at: thing.count / max,
      spoken: `${thing.label}: ${formatCount(thing.count)}`,
    })),
    ticks: Array.from({ length: max / step + 1 }, (_, i) => ({ at: (i * step) / max, label: formatCount(i * step) })),
  };
}

/** A count has whole ticks: the smallest of 1, 2, 5 times a power of ten that is not below. */
function wholeStep(rough: number): number {
  const power = 10 ** Math.floor(Math.log10(Math.max(1, rough)));
  return [1, 2, 5, 10].map((nice) => nice * power).find((step) => step >= rough) ?? 10 * power;
}
