import { expect, test } from "vitest";
import { cellFunnel, type FunnelCell, ratioLimits } from "@/lib/signals/cell-funnel";

const cell = (expected: number, observed: number): FunnelCell => ({
  key: { kind: "component", word: "pump", productType: "dishwasher", maker: "A", model: "M", madeHalf: undefined },
  expected,
  observed,
});

/** Chances of 0, 1, 2, … term by term: Poisson, or with a gamma distributed ratio of that standard deviation. */
function chances(expected: number, spread: number): number[] {
  const size = spread === 0 ? Number.POSITIVE_INFINITY : 1 / spread ** 2;
  let chance = spread === 0 ? Math.exp(-expected) : (size / (size + expected)) ** size;
  return Array.from({ length: 400 }, (_, count) => {
    const own = chance;
    chance *= spread === 0 ? expected / (count + 1) : ((size + count) / (count + 1)) * (expected / (size + expected));
    return own;
  });
}

const groups = [
  [0.4, 3],
  [2, 2],
  [5, 14],
  [20, 19],
  [60, 95],
] as const;

// By full enumeration: every count that a group could have, with its chance; a count is beyond where luck gives so many or
// more in less than 1 in 40 (1 in 1,000) cases.
test.each([0, 0.3])("the limits, who is beyond and how many luck puts there (spread %f)", (spread) => {
  const share = { inner: 0.025, outer: 0.001 };
  const funnel = cellFunnel(
    groups.map(([expected, observed]) => cell(expected, observed)),
    spread,
  );
  for (const pick of ["inner", "outer"] as const) {
    let [counted, byLuck] = [0, 0];
    for (const [expected, observed] of groups) {
      const all = chances(expected, spread);
      const tail = (count: number) => all.slice(count).reduce((sum, chance) => sum + chance, 0);
      const first = all.findIndex((_, count) => tail(count) <= share[pick]);
      expect(ratioLimits(expected, spread)[pick]).toBe(first - 1);
      byLuck += tail(first);
      if (observed >= first) counted += 1;
    }
    expect(funnel.beyond[pick].counted).toBe(counted);
    expect(funnel.beyond[pick].byLuck).toBeCloseTo(byLuck, 9);
  }
  expect(funnel.groups).toBe(groups.length);
});

test("all that lie beyond are drawn, and of the others the largest", () => {
  const many = Array.from({ length: 400 }, (_, i) => cell(1 + i / 100, i % 100 === 0 ? 30 : 1));
  const { drawn, groups: all } = cellFunnel(many, 0);
  expect(all).toBe(400);
  expect(drawn).toHaveLength(150);
  expect(drawn.filter(({ observed }) => observed === 30)).toHaveLength(4);
  expect(Math.min(...drawn.slice(4).map(({ expected }) => expected))).toBeGreaterThan(3);
});

test("a group of which nothing is expected is the caller's mistake", () => {
  expect(() => cellFunnel([cell(0, 1)], 0)).toThrow(RangeError);
});
