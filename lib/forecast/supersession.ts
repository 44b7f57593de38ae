import type { MonthlyCounts } from "@/lib/statistics/demand/learn-levels";

/** One part number that took the place of another. */
export interface Supersession {
  readonly from: string;
  readonly to: string;
}

export type PooledHistories =
  | {
      readonly kind: "pooled";
      readonly histories: ReadonlyMap<string, MonthlyCounts>;
      readonly currentOf: (part: string) => string;
    }
  | { readonly kind: "circle"; readonly parts: readonly string[] }
  | { readonly kind: "two-successors"; readonly part: string; readonly successors: readonly string[] };

/**
 * The history of each current part number with those of all numbers that it replaced, month by month. A month is
 * missing only where it is missing for all of them.
 * @param histories by part number; all end with the same month, shorter ones began later
 * @returns "circle" with the numbers in it, or "two-successors" of a number, where no current number exists
 */
export function pooledHistories(
  histories: ReadonlyMap<string, MonthlyCounts>,
  links: readonly Supersession[],
): PooledHistories {
  const next = new Map<string, string>();
  for (const { from, to } of links) {
    const known = next.get(from);
    if (known !== undefined && known !== to) return { kind: "two-successors", part: from, successors: [known, to] };
    next.set(from, to);
  }
  const circle = circleIn(next);
  if (circle !== undefined) return { kind: "circle", parts: circle };
  const currentOf = (part: string): string => {
    const successor = next.get(part);
    return successor === undefined ? part : currentOf(successor);
  };
  const pooled = new Map<string, MonthlyCounts>();
  for (const [part, history] of histories) {
    const current = currentOf(part);
    const before = pooled.get(current);
    pooled.set(current, before === undefined ? history : added(before, history));
  }
  return { kind: "pooled", histories: pooled, currentOf };
}

function circleIn(next: ReadonlyMap<string, string>): readonly string[] | undefined {
  for (const start of next.keys()) {
    const seen = [start];
    for (let part = next.get(start); part !== undefined; part = next.get(part)) {
      const back = seen.indexOf(part);
      if (back >= 0) return seen.slice(back);
      seen.push(part);
    }
  }
  return undefined;
}

/** Aligned at their ends. */
function added(a: MonthlyCounts, b: MonthlyCounts): MonthlyCounts {
  const length = Math.max(a.length, b.length);
  return Array.from({ length }, (_, i) => {
    const [one, other] = [a[i - length + a.length], b[i - length + b.length]];
    return one === undefined ? other : one + (other ?? 0);
  });
}
