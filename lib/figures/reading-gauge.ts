import { formatReadingNumber, type OpenRange } from "@/lib/format/format-reading";

/** Positions on a horizontal scale, 0 at its left end and 1 at its right. */
export interface ReadingGauge {
  readonly kind: "gauge";
  /** Solid bar of the expected range. */
  readonly from: number;
  readonly to: number;
  /** Where an end is open the bar ends in an arrow instead of a bracket. */
  readonly lowOpen: boolean;
  readonly highOpen: boolean;
  readonly ends: readonly { readonly at: number; readonly label: string }[];
  /** Undefined where nothing was measured as a number. */
  readonly reading: { readonly at: number; readonly beyond: "left" | "right" | undefined } | undefined;
}

/** A bracketed range takes the middle half of the scale; a reading far outside stands at the edge with an arrow. */
const bracketed = { from: 0.25, to: 0.75 };
const edge = 0.03;

/** @returns `no-range` where both ends are open: there is nothing to draw a reading against */
export function readingGauge(
  { low, high }: OpenRange,
  value: number | undefined,
): ReadingGauge | { readonly kind: "no-range" } {
  const place = placement(low, high);
  if (place === undefined) return { kind: "no-range" };
  const ends = [low, high]
    .filter((end) => end !== undefined)
    .map((end) => ({ at: place(end), label: formatReadingNumber(end) }));
  const at = value === undefined ? undefined : place(value);
  return {
    kind: "gauge",
    from: low === undefined ? 0 : place(low),
    to: high === undefined ? 1 : place(high),
    lowOpen: low === undefined,
    highOpen: high === undefined,
    ends: low === high ? ends.slice(0, 1) : ends,
    reading: at === undefined ? undefined : keptOn(at),
  };
}

/** Linear: two known ends span the middle half; one known end stands in the middle of a scale of three times its own size. */
function placement(low: number | undefined, high: number | undefined): ((value: number) => number) | undefined {
  const known = low ?? high;
  if (known === undefined) return undefined;
  if (low !== undefined && high !== undefined) {
    const width = high > low ? high - low : Math.max(Math.abs(low), 1);
    const span = bracketed.to - bracketed.from;
    const start = high > low ? bracketed.from : 0.5;
    return (value) => start + ((value - low) / width) * span;
  }
  const reach = 3 * Math.max(Math.abs(known), 1);
  return (value) => 0.5 + (value - known) / reach;
}

function keptOn(at: number): ReadingGauge["reading"] {
  if (at < edge) return { at: edge, beyond: "left" };
  if (at > 1 - edge) return { at: 1 - edge, beyond: "right" };
  return { at, beyond: undefined };
}
