import { formatCount } from "./format-count";

export interface NeedRange {
  readonly low60: number;
  readonly high60: number;
  readonly low90: number;
  readonly high90: number;
}

/** "most likely 3 to 6; 9 times in 10 between 1 and 9": whole pieces, never a lone number. */
export function describeNeed({ low60, high60, low90, high90 }: NeedRange): string {
  return `most likely ${run(low60, high60)}; 9 times in 10 ${low90 === high90 ? formatCount(low90) : `between ${formatCount(low90)} and ${formatCount(high90)}`}`;
}

/** "3 to 6", or "3" where both are one. */
export function run(low: number, high: number): string {
  return low === high ? formatCount(low) : `${formatCount(low)} to ${formatCount(high)}`;
}

/** "under 1 in 100", "12 in 100", "over 99 in 100". */
export function describeChance(chance: number): string {
  if (chance < 0.01) return "under 1 in 100";
  if (chance > 0.99) return "over 99 in 100";
  return `${formatCount(Math.round(100 * chance))} in 100`;
}
