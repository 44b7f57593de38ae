import { describe, expect, test } from "vitest";
import { equalPrecisionCritical, hallWellnerCritical } from "@/lib/statistics/survival/band-critical-value";
import { type DrawnCurve, kaplanMeier } from "@/lib/statistics/survival/kaplan-meier";
import { survivalBand } from "@/lib/statistics/survival/survival-band";
import { seededUniforms } from "./made-up-lives";
import { leukemia } from "./reference-lives";

// Klein & Moeschberger (2003), section 4.4, Tables C.3 and C.4 at aL = 0.1, aU = 0.6 and 95 %: remembered, 2.8826 and 1.3211.
test("critical values of the textbook tables", () => {
  expect(equalPrecisionCritical(0.6 / 0.4 / (0.1 / 0.9), 0.95)).toBeCloseTo(2.8826, 3);
  expect(hallWellnerCritical({ from: 0.1, to: 0.6, confidence: 0.95 })).toBeCloseTo(1.3211, 3);
});

// Over the whole of [0, 1] the bridge's largest size has Kolmogorov's distribution: 1.3581 and 1.6276 (Smirnov 1948).
test("Hall–Wellner over the whole range is Kolmogorov's critical value", () => {
  expect(hallWellnerCritical({ from: 0, to: 1, confidence: 0.95 })).toBeCloseTo(1.3581, 4);
  expect(hallWellnerCritical({ from: 0, to: 1, confidence: 0.99 })).toBeCloseTo(1.6276, 4);
});

// At a single point the bridge is normal with variance a (1 − a).
test("Hall–Wellner over a vanishing range is a normal quantile", () => {
  const critical = hallWellnerCritical({ from: 0.3, to: 0.3005, confidence: 0.95 });
  expect(critical / Math.sqrt(0.3 * 0.7)).toBeGreaterThan(1.96);
  expect(critical / Math.sqrt(0.3 * 0.7)).toBeLessThan(2.06);
});

describe("bands of the remission trial", () => {
  const curve = (): DrawnCurve => {
    const drawn = kaplanMeier(leukemia("6-MP"), { confidence: 0.95, interval: "log-log" });
    if (drawn.kind !== "curve") throw new Error(drawn.kind);
    return drawn;
  };
  const options = { from: 6, to: 23, confidence: 0.95, interval: "log-log" } as const;

  test.each([{ kind: "equal-precision" } as const, { kind: "hall-wellner", lives: 21 } as const])(
    "$kind: wider than the pointwise limits at every step",
    (shape) => {
      const band = survivalBand(curve(), { ...options, shape });
      if (band.kind !== "band") throw new Error(band.kind);
      expect(band.steps.map((step) => step.age)).toEqual([6, 7, 10, 13, 16, 22, 23]);
      for (const { age, limits } of band.steps) {
        const pointwise = curve().steps.find((step) => step.age === age)?.limits;
        if (limits.kind !== "limits" || pointwise?.kind !== "limits") throw new Error("no limits");
        expect(limits.low).toBeLessThan(pointwise.low);
        expect(limits.high).toBeGreaterThan(pointwise.high);
      }
    },
  );

  // By hand on the plain scale: S ± c (1 + n σ²) / √n · S.
  test("the Hall–Wellner half-width is c (1 + n σ²) S / √n", () => {
    const band = survivalBand(curve(), { ...options, interval: "plain", shape: { kind: "hall-wellner", lives: 21 } });
    if (band.kind !== "band") throw new Error(band.kind);
    const scaled = band.steps.flatMap(({ survival, limits }) => {
      if (limits.kind !== "limits" || limits.low <= 0) return [];
      const variance = (limits.standardError / survival) ** 2;
      return [((survival - limits.low) * Math.sqrt(21)) / (survival * (1 + 21 * variance))];
    });
    expect(scaled.length).toBeGreaterThan(2);
    for (const critical of scaled) expect(critical).toBeCloseTo(scaled[0] ?? 0, 10);
  });

  test("a stretch with one step is too short for a band", () => {
    expect(survivalBand(curve(), { ...options, to: 6.5, shape: { kind: "equal-precision" } })).toEqual({
      kind: "too-short",
    });
  });
});

// Recovery: exponential lives of 150 units, half of them censored by 1; the true curve must lie inside 95 % of the bands.
test("bands hold the true curve about as often as they claim", () => {
  const next = seededUniforms(7);
  const trials = 200;
  const held = { "equal-precision": 0, "hall-wellner": 0 };
  for (let trial = 0; trial < trials; trial++) {
    const rows = Array.from({ length: 150 }, () => {
      const life = -Math.log(1 - next());
      const end = 0.4 + 1.2 * next();
      return { entry: 0, exit: Math.min(life, end), event: life <= end, count: 1 };
    });
    const drawn = kaplanMeier(rows, { confidence: 0.95, interval: "log-log" });
    if (drawn.kind !== "curve") throw new Error(drawn.kind);
    for (const kind of ["equal-precision", "hall-wellner"] as const) {
      const shape = kind === "equal-precision" ? { kind } : { kind, lives: 150 };
      const band = survivalBand(drawn, { from: 0.1, to: 1, shape, confidence: 0.95, interval: "log-log" });
      if (band.kind !== "band") throw new Error(band.kind);
      const inside = band.steps.every(({ age, limits }, i) => {
        const until = Math.min(1, band.steps[i + 1]?.age ?? 1);
        return limits.kind === "limits" && limits.low <= Math.exp(-until) + 1e-12 && limits.high >= Math.exp(-age);
      });
      if (inside) held[kind]++;
    }
  }
  expect(held["equal-precision"] / trials).toBeGreaterThan(0.92);
  expect(held["hall-wellner"] / trials).toBeGreaterThan(0.92);
});
