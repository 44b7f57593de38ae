import { describe, expect, test } from "vitest";
import { nelsonAalen } from "@/lib/statistics/survival/nelson-aalen";
import { expectClose, fromR } from "../../reference/read-reference";
import { generatorFans, leukemia, macs, rossi } from "./reference-lives";

// R 4.2.2, survival 3.5.3, survfit (ctype = 1): tests/reference/survival.R.
test.each([
  ["leukemia 6-MP", () => leukemia("6-MP")],
  ["macs", macs],
  ["rossi late entry", rossi],
  ["genfan", generatorFans],
])("%s: cumulative hazard and its error agree with R", (caseName, rows) => {
  const curve = nelsonAalen(rows(), { confidence: 0.95, interval: "log" });
  if (curve.kind !== "curve") throw new Error(curve.kind);
  const steps = new Map(curve.steps.map((step) => [step.age, step]));
  for (const { age, value } of fromR(caseName, "cumulative_hazard")) {
    expectClose(steps.get(age)?.cumulativeHazard ?? 0, value, 1e-12);
  }
  for (const { age, value } of fromR(caseName, "cumulative_hazard_error")) {
    expectClose(steps.get(age)?.standardError ?? 0, value, 1e-12);
  }
});

describe("limits", () => {
  // By hand: one failure among four, hazard 1/4, error 1/4; 1.959964 errors either way.
  const rows = [
    { entry: 0, exit: 5, event: true, count: 1 },
    { entry: 0, exit: 9, event: false, count: 3 },
  ];

  test("on the log scale they are the hazard times and over exp(z error / hazard)", () => {
    const curve = nelsonAalen(rows, { confidence: 0.95, interval: "log" });
    const step = curve.kind === "curve" ? curve.steps[0] : undefined;
    expect(step?.low).toBeCloseTo(0.25 * Math.exp(-1.959963984540054), 12);
    expect(step?.high).toBeCloseTo(0.25 * Math.exp(1.959963984540054), 12);
  });

  test("on the plain scale the lower one stops at 0", () => {
    const curve = nelsonAalen(rows, { confidence: 0.95, interval: "plain" });
    const step = curve.kind === "curve" ? curve.steps[0] : undefined;
    expect(step?.low).toBe(0);
    expect(step?.high).toBeCloseTo(0.25 * 2.959963984540054, 12);
  });

  test("no failures and no exposure are cases of their own", () => {
    const options = { confidence: 0.95, interval: "log" } as const;
    expect(nelsonAalen(rows.slice(1), options)).toEqual({ kind: "no-events", lastAge: 9 });
    expect(nelsonAalen([], options)).toEqual({ kind: "no-exposure" });
  });
});
