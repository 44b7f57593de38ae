import { expect, test } from "vitest";
import { shareFunnel } from "@/lib/signals/share-funnel";

/** P(X <= k) summed term by term: shares no code with lib/statistics. */
function atMost(k: number, trials: number, share: number): number {
  let term = (1 - share) ** trials;
  let total = term;
  for (let i = 1; i <= k; i++) {
    term *= ((trials - i + 1) / i) * (share / (1 - share));
    total += term;
  }
  return total;
}

// By definition: the limit is the smallest count that is reached or stayed under with at least that chance.
test.each([
  [20, 0.6],
  [137, 0.64],
  [9, 0.05],
])("limits of %i jobs around %f", (trials, share) => {
  const { low95, high95, low998, high998 } = shareFunnel({ trials, share });
  for (const [limit, chance] of [
    [low95, 0.025],
    [high95, 0.975],
    [low998, 0.001],
    [high998, 0.999],
  ] as const) {
    const count = Math.round(limit * trials);
    expect(atMost(count, trials, share)).toBeGreaterThanOrEqual(chance - 1e-12);
    if (count > 0) expect(atMost(count - 1, trials, share)).toBeLessThan(chance);
  }
});

test("a group without jobs, or a share of 0, is the caller's mistake", () => {
  expect(() => shareFunnel({ trials: 0, share: 0.5 })).toThrow(/trials/);
  expect(() => shareFunnel({ trials: 5, share: 0 })).toThrow(/share/);
});
