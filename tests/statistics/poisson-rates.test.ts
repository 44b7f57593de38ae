import { expect, test } from "vitest";
import { meanTimeBetween } from "@/lib/statistics/intervals/mean-time-between";
import { observedOverExpected } from "@/lib/statistics/intervals/observed-over-expected";
import { poissonMidP } from "@/lib/statistics/intervals/poisson-mid-p";
import { flatPriorMeanRate, poissonOneSided } from "@/lib/statistics/intervals/poisson-one-sided";
import { poissonRate } from "@/lib/statistics/intervals/poisson-rate";
import { expectClose, expectPrinted } from "@/tests/reference/read-reference";

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

// By definition, at every level down to one in a thousand: both limits then lie on one side of the point.
test.each([0.001, 0.05, 0.5, 0.999999])("mid-P limits exist at confidence %d", (confidence) => {
  const { low, high } = poissonMidP({ events: 1, exposure: 1, confidence });
  const tail = (1 - confidence) / 2;
  expectClose((atMost(1, high) + atMost(0, high)) / 2, tail, 1e-9);
  expectClose(1 - (atMost(1, low) + atMost(0, low)) / 2, tail, 1e-8);
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
