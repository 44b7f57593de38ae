import { describe, expect, test } from "vitest";
import { rateRatio } from "@/lib/statistics/intervals/rate-ratio";
import { type StratifiedRateRatioInput, stratifiedRateRatio } from "@/lib/statistics/intervals/stratified-rate-ratio";
import { stratifiedRatioEstimate } from "@/lib/statistics/stratified-ratio-estimate";

type Strata = StratifiedRateRatioInput["strata"];
const group = (events: number, exposure: number) => ({ events, exposure });

function choose(n: number, k: number): number {
  return k === 0 ? 1 : (choose(n, k - 1) * (n - k + 1)) / k;
}

/** P(first group's events in all >= or <= `bound`), by walking through every outcome of every stratum: no shared code. */
function tail(strata: Strata, ratio: number, bound: number, side: "at least" | "at most"): number {
  const walk = (index: number, sofar: number, chance: number): number => {
    const stratum = strata[index];
    if (stratum === undefined) return (side === "at least" ? sofar >= bound : sofar <= bound) ? chance : 0;
    const n = stratum.first.events + stratum.second.events;
    const p = (ratio * stratum.first.exposure) / (ratio * stratum.first.exposure + stratum.second.exposure);
    let sum = 0;
    for (let k = 0; k <= n; k++) sum += walk(index + 1, sofar + k, chance * choose(n, k) * p ** k * (1 - p) ** (n - k));
    return sum;
  };
  return walk(0, 0, 1);
}

const three: Strata = [
  { first: group(4, 120), second: group(9, 400) },
  { first: group(7, 90), second: group(5, 210) },
  { first: group(2, 30), second: group(0, 260) },
];

// By definition: at each limit the tail beyond the observed count holds exactly 2.5 %.
test("the limits put 2.5 % in each tail of the sum over strata", () => {
  const found = stratifiedRateRatio({ strata: three, confidence: 0.95 });
  if (found.kind !== "ratio") throw new Error("both groups have events");
  expect(tail(three, found.low, 13, "at least")).toBeCloseTo(0.025, 10);
  expect(tail(three, found.high, 13, "at most")).toBeCloseTo(0.025, 10);
  const p = 2 * Math.min(tail(three, 1, 13, "at least"), tail(three, 1, 13, "at most"));
  expect(found.pValue).toBeCloseTo(p, 12);
  expect(found.low).toBeLessThan(found.point);
  expect(found.point).toBeLessThan(found.high);
});

// The maximum-likelihood ratio expects just as many events as were seen.
test("the point expects the observed count", () => {
  const found = stratifiedRateRatio({ strata: three, confidence: 0.95 });
  if (found.kind !== "ratio") throw new Error("both groups have events");
  const expected = three.reduce((sum, { first, second }) => {
    const share = (found.point * first.exposure) / (found.point * first.exposure + second.exposure);
    return sum + (first.events + second.events) * share;
  }, 0);
  expect(expected).toBeCloseTo(13, 9);
});

describe("one stratum", () => {
  test.each([
    [group(11, 800), group(21, 3011)],
    [group(0, 80), group(12, 300)],
    [group(3, 80), group(0, 300)],
    [group(900, 7000), group(1100, 9000)],
  ])("%o against %o is the plain rate ratio", (first, second) => {
    const plain = rateRatio({ first, second, confidence: 0.9, twoSided: "central" });
    const found = stratifiedRateRatio({ strata: [{ first, second }], confidence: 0.9 });
    expect(found.kind).toBe(plain.kind);
    if (plain.kind === "no-events" || found.kind === "no-events") throw new Error("there are events");
    expect(found.low).toBeCloseTo(plain.low, 9);
    expect(found.pValue).toBeCloseTo(plain.pValue, 9);
    if (plain.kind === "ratio" && found.kind === "ratio") {
      expect(found.point).toBeCloseTo(plain.point, 9);
      expect(found.high).toBeCloseTo(plain.high, 9);
    }
  });
});

test("unequal ages that make a crude difference vanish once ages are compared with their like", () => {
  // The same rates at each age, 1 and 10 in 100; the first group is mostly old.
  const strata: Strata = [
    { first: group(1, 100), second: group(90, 9000) },
    { first: group(90, 900), second: group(10, 100) },
  ];
  const found = stratifiedRateRatio({ strata, confidence: 0.95 });
  if (found.kind !== "ratio") throw new Error("both groups have events");
  expect(found.point).toBeCloseTo(1, 9);
  expect(91 / 1000 / (100 / 9100)).toBeGreaterThan(8);
});

test("no events anywhere is a named answer, and an impossible exposure names its stratum", () => {
  expect(stratifiedRateRatio({ strata: [{ first: group(0, 1), second: group(0, 2) }], confidence: 0.95 })).toEqual({
    kind: "no-events",
  });
  expect(() =>
    stratifiedRateRatio({ strata: [{ first: group(0, 1), second: group(1, 0) }], confidence: 0.95 }),
  ).toThrow(/strata\[0\]\.second\.exposure/);
});

test("as an estimate it carries the events expected at the other group's rates", () => {
  const found = stratifiedRatioEstimate({ strata: three, level: 0.95 });
  if (found.kind !== "estimate") throw new Error("both groups have events");
  // By hand: 9/400 x 120 + 5/210 x 90 + 0/260 x 30.
  expect(found.estimate.n).toBeCloseTo(2.7 + 450 / 210, 12);
  expect(found.estimate.events).toBe(13);
  expect(found.estimate.lo).toBeLessThan(found.estimate.innerLo);
  expect(found.estimate.innerHi).toBeLessThan(found.estimate.hi);
});
