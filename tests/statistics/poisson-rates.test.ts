import { expect, test } from "vitest";
import { meanTimeBetween } from "@/lib/statistics/intervals/mean-time-between";
import { minimumLikelihoodP } from "@/lib/statistics/intervals/minimum-likelihood";
import { observedOverExpected } from "@/lib/statistics/intervals/observed-over-expected";
import { poissonMidP } from "@/lib/statistics/intervals/poisson-mid-p";
import { flatPriorMeanRate, poissonOneSided } from "@/lib/statistics/intervals/poisson-one-sided";
import { poissonRate } from "@/lib/statistics/intervals/poisson-rate";
import { type RateRatio, rateRatio } from "@/lib/statistics/intervals/rate-ratio";
import { expectClose, expectPrinted } from "@/tests/reference/read-reference";
import { namedValues } from "@/tests/reference/read-table";

/** P(X <= k) for a Poisson mean, summed term by term: shares no code with lib/statistics. */
function atMost(k: number, mean: number): number {
  let term = Math.exp(-mean);
  let total = term;
  for (let i = 1; i <= k; i++) total += term *= mean / i;
  return k < 0 ? 0 : total;
}

// By definition: at each limit the tail beyond the observed count holds exactly 2.5 %.
test.each([1, 4, 37])("95 %% limits for %i events put 2.5 %% in each tail", (events) => {
  const { low, high } = poissonRate({ events, exposure: 1, confidence: 0.95 });
  expect(atMost(events, high)).toBeCloseTo(0.025, 12);
  expect(1 - atMost(events - 1, low)).toBeCloseTo(0.025, 12);
});

// Garwood (1936); Pearson & Hartley, Biometrika Tables vol. 1, table 40. The print at x = 0 was read in a stored
// page; the others are from memory. All were recomputed in R.
test("P01: printed 95 % limits of a Poisson mean", () => {
  expectPrinted(
    "P01",
    limitsOf([0, 1, 2, 3, 5, 10, 20, 50, 100], 0.95, (x, end) => `x${x}_${end}`),
  );
});

// The same table, columns 0.99 and 0.90; recomputed in R, the print was not seen.
test("P02: 99 % and 90 % limits of a Poisson mean", () => {
  const counts = [0, 1, 2, 5, 10];
  expectPrinted("P02", {
    ...limitsOf(counts, 0.99, (x, end) => `x${x}_99_${end}`),
    ...limitsOf(counts, 0.9, (x, end) => `x${x}_90_${end}`),
  });
});

function limitsOf(counts: readonly number[], confidence: number, name: (x: number, end: "lo" | "hi") => string) {
  return Object.fromEntries(
    counts.flatMap((events) => {
      const { low, high } = poissonRate({ events, exposure: 1, confidence });
      return [
        [name(events, "lo"), low],
        [name(events, "hi"), high],
      ];
    }),
  );
}

// NIST/SEMATECH e-Handbook 8.4.5.1: the formula was read; factors and example are from memory, recomputed in R.
test("P03: factors for the mean time between failures of a test stopped at a time", () => {
  const factors = [1, 2, 3, 5, 10].flatMap((failures) => {
    const { low, high } = bounds(meanTimeBetween({ failures, time: failures, confidence: 0.95, stoppedAt: "time" }));
    return [
      [`r${failures}_95_lo`, low],
      [`r${failures}_95_hi`, high],
    ] as const;
  });
  const example = bounds(meanTimeBetween({ failures: 2, time: 800, confidence: 0.9, stoppedAt: "time" }));
  expectPrinted("P03", {
    ...Object.fromEntries(factors),
    mtbf: example.point,
    ex90_lo: example.low,
    ex90_hi: example.high,
  });
});

function bounds(result: ReturnType<typeof meanTimeBetween>) {
  if (result.kind !== "interval") throw new Error("there were failures, so there is an interval");
  return result;
}

// By definition: without failures P(0 events in the time) = doubt at the lower limit, so exp(−T / low) = 1 − confidence.
test("without failures only a lower limit of the mean time exists", () => {
  const result = meanTimeBetween({ failures: 0, time: 500, confidence: 0.9, stoppedAt: "time" });
  expect(result).toEqual({ kind: "lower-limit-only", low: expect.closeTo(500 / Math.log(10), 9) });
});

// By definition: stopped at the third failure, 2T / θ is chi-square with 6 degrees of freedom at both limits.
test("a test stopped at a failure has a higher lower limit than one stopped at a time", () => {
  const { low } = bounds(meanTimeBetween({ failures: 3, time: 90, confidence: 0.9, stoppedAt: "failure" }));
  expect(atMost(2, 90 / low)).toBeCloseTo(0.05, 12);
});

// Fay (2010), R Journal 2(1), 53-58: printed output, read.
test("P05: rate ratio with the p-value that belongs to its interval", () => {
  const groups = { first: { events: 2, exposure: 17877 }, second: { events: 10, exposure: 20000 }, confidence: 0.95 };
  const central = ratioOf(rateRatio({ ...groups, twoSided: "central" }));
  const minimum = ratioOf(rateRatio({ ...groups, twoSided: "minimum-likelihood" }));
  expectPrinted("P05", {
    ratio: central.point,
    lo: central.low,
    hi: central.high,
    p_central: central.pValue,
    p_minlike: minimum.pValue,
  });
  // Each interval agrees with its own p-value about a ratio of 1; the two would contradict each other if mixed.
  expect(central.high).toBeGreaterThan(1);
  expect(minimum.high).toBeLessThan(1);
});

// Andersen (1977) data, R 4.2.2 poisson.test: recomputed.
test("P07: rate ratio of one town against three", () => {
  const groups = { first: { events: 11, exposure: 800 }, second: { events: 21, exposure: 3011 }, confidence: 0.95 };
  const { point, low, high } = ratioOf(rateRatio({ ...groups, twoSided: "central" }));
  const { pValue } = ratioOf(rateRatio({ ...groups, twoSided: "minimum-likelihood" }));
  expectPrinted("P07", { ratio: point, lo: low, hi: high, p_minlike: pValue });
});

function ratioOf(result: RateRatio) {
  if (result.kind !== "ratio") throw new Error("both groups have events, so there is a ratio");
  return result;
}

// R 4.2.2 poisson.test, tests/reference/distributions.R (its interval is printed to ten digits).
test("rate ratios agree with R for uneven and empty groups", () => {
  const exposures = new Map([
    [2, [17877, 20000]],
    [11, [800, 3011]],
    [0, [3, 5]],
    [40, [10, 9]],
  ]);
  const lows = namedValues("distributions-from-r.csv", "ratio.low");
  const highs = namedValues("distributions-from-r.csv", "ratio.high");
  namedValues("distributions-from-r.csv", "ratio.p").forEach(({ a, b, value }, i) => {
    const [one = 1, two = 1] = exposures.get(a) ?? [];
    const groups = { first: { events: a, exposure: one }, second: { events: b, exposure: two }, confidence: 0.95 };
    const central = ratioOf(rateRatio({ ...groups, twoSided: "central" }));
    expect(central.low).toBeCloseTo(lows[i]?.value ?? -1, 8);
    expect(central.high).toBeCloseTo(highs[i]?.value ?? -1, 8);
    expectClose(ratioOf(rateRatio({ ...groups, twoSided: "minimum-likelihood" })).pValue, value, 1e-9);
  });
});

// By definition: the matching interval holds every ratio whose p-value exceeds 5 %, found here by walking.
test.each([
  [2, 10],
  [7, 7],
  [1, 30],
  [0, 6],
])("the minimum-likelihood interval of %i against %i is what its p-value allows", (a, b) => {
  const groups = { first: { events: a, exposure: 1 }, second: { events: b, exposure: 1 }, confidence: 0.95 };
  const { low, high } = ratioOf(rateRatio({ ...groups, twoSided: "minimum-likelihood" }));
  const p = (ratio: number) => minimumLikelihoodP({ events: a, trials: a + b, chance: ratio / (1 + ratio) });
  const kept = Array.from({ length: 40000 }, (_, i) => 1e-4 * 1.0004 ** i).filter((ratio) => p(ratio) > 0.05);
  if (a > 0) expectClose(low, kept[0] ?? 0, 5e-4);
  else expect(low).toBe(0);
  expectClose(high, kept.at(-1) ?? 0, 5e-4);
});

test("a group without events leaves the ratio open above, two leave nothing", () => {
  const none = { events: 0, exposure: 4 };
  const some = { events: 3, exposure: 4 };
  const open = rateRatio({ first: some, second: none, confidence: 0.95, twoSided: "central" });
  expect(open).toMatchObject({ kind: "no-upper-limit", pValue: expect.closeTo(0.25, 14) }); // 2 × (1/2)³, by hand
  expect(rateRatio({ first: none, second: none, confidence: 0.95, twoSided: "central" })).toEqual({
    kind: "no-events",
  });
  expect(() =>
    rateRatio({ first: some, second: { events: 1, exposure: 0 }, confidence: 0.95, twoSided: "central" }),
  ).toThrow(/second.exposure/);
});

// Breslow & Day (1987) data, R 4.2.2 poisson.test: recomputed.
test("P08: observed over expected, Welsh nickel workers", () => {
  const { point, low, high } = observedOverExpected({ observed: 137, expected: 24.19893, confidence: 0.95 });
  expectPrinted("P08", { smr: point, lo: low, hi: high });
});

// A published re-analysis of hard-drive failures (source in the case): printed rows read, Garwood limits recomputed.
test("P10: failures in per cent per year, with the flat-prior mean and one-sided limit", () => {
  const percent = (events: number, driveDays: number) => {
    const exposure = driveDays / 365 / 100;
    return {
      rate: events / exposure,
      mean: flatPriorMeanRate({ events, exposure }),
      limit: poissonOneSided({ events, exposure, confidence: 0.95, side: "upper" }),
      exact: poissonRate({ events, exposure, confidence: 0.95 }),
    };
  };
  const a = percent(50, 3555491);
  const b = percent(21, 1416127);
  expectPrinted("P10", {
    afr_a: a.rate,
    mean_a: a.mean,
    limit95_a: a.limit,
    garwood_lo_a: a.exact.low,
    garwood_hi_a: a.exact.high,
    afr_b: b.rate,
    mean_b: b.mean,
    limit95_b: b.limit,
  });
});

// By hand: at no events the one-sided 95 % limit is −ln 0.05 = 2.9957.
test("one-sided limits spend all the doubt on one side", () => {
  expectClose(poissonOneSided({ events: 0, exposure: 1, confidence: 0.95, side: "upper" }), -Math.log(0.05), 1e-13);
  expect(poissonOneSided({ events: 0, exposure: 1, confidence: 0.95, side: "lower" })).toBe(0);
  const low = poissonOneSided({ events: 6, exposure: 2, confidence: 0.9, side: "lower" });
  expect(1 - atMost(5, 2 * low)).toBeCloseTo(0.1, 12);
});

// By definition: half of the observed count's probability belongs to each tail.
test.each([0, 1, 5, 60])("mid-P limits for %i events put 2.5 %% in each tail", (events) => {
  const { low, high } = poissonMidP({ events, exposure: 1, confidence: 0.95 });
  expect((atMost(events, high) + atMost(events - 1, high)) / 2).toBeCloseTo(0.025, 12);
  if (events > 0) expect(1 - (atMost(events, low) + atMost(events - 1, low)) / 2).toBeCloseTo(0.025, 12);
  else expect(low).toBe(0);
});

test("a million events keep their interval, and arguments outside their range throw", () => {
  const { low, high } = poissonRate({ events: 1_000_000, exposure: 1, confidence: 0.95 });
  // The limits lie near n ∓ 1.96 √n; the skewness adds about (z² − 1) / 3 and (z² + 2) / 3 (Cornish-Fisher).
  expect(low).toBeCloseTo(1e6 - 1959.964 + 0.947, 0);
  expect(high).toBeCloseTo(1e6 + 1959.964 + 1.947, 0);
  expect(() => poissonRate({ events: 1.5, exposure: 1, confidence: 0.95 })).toThrow(
    "events must be a whole number, 0 or more; it is 1.5",
  );
  expect(() => poissonRate({ events: 1, exposure: 0, confidence: 0.95 })).toThrow(/exposure .* it is 0/);
  expect(() => poissonRate({ events: 1, exposure: 1, confidence: 95 })).toThrow(/confidence .* it is 95/);
});
