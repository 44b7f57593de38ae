import { describe, expect, test } from "vitest";
import { fitExponential } from "@/lib/statistics/life/fit-exponential";
import { fitLognormal } from "@/lib/statistics/life/fit-lognormal";
import { fitWeibull } from "@/lib/statistics/life/fit-weibull";
import type { FittedLife } from "@/lib/statistics/life/fitted-life";
import { kaplanMeier } from "@/lib/statistics/survival/kaplan-meier";
import type { LifeRow } from "@/lib/statistics/survival/life-rows";
import { nelsonAalen } from "@/lib/statistics/survival/nelson-aalen";
import { demoFromR, demoLives, demoTypesOf, demoUnits } from "../reference/demo-register";
import { expectClose } from "../reference/read-reference";
import { macs, rossi } from "./survival/reference-lives";

// Every component of the demo company against R 4.2.2 and survival 3.5.3 (tests/reference/demo-survival.R): survfit with
// late entry and without, survreg for lives watched from the start, and Newton steps on a likelihood differentiated by
// deriv3 where lives enter late, which survreg does not know. All to 1e-6 relative.

const units = demoUnits();
const fromR = demoFromR();
const cases = [...fromR.keys()].filter((name) => / (all|new)$/.test(name));
const fits = { weibull: fitWeibull, lognormal: fitLognormal, exponential: fitExponential } as const;
const options = { confidence: 0.95, minimumEvents: 5, failedAtZero: { within: 0.5 } };

/** `all`: every unit; `new`: units watched since they entered service. */
function livesOf(name: string): LifeRow[] {
  const [component = "", kind] = name.split(" ");
  const types = demoTypesOf(component);
  return units
    .filter((unit) => types.has(unit.type) && (kind === "all" || unit.observedFrom === unit.inService))
    .flatMap((unit) => demoLives(unit, component));
}

function expected(name: string, quantity: string): readonly { readonly age: number; readonly value: number }[] {
  const found = fromR.get(name)?.get(quantity);
  if (found === undefined) throw new Error(`R has no ${quantity} for ${name}`);
  return found;
}

const one = (name: string, quantity: string) => expected(name, quantity)[0]?.value ?? Number.NaN;

test("R was given every component that failed, late entries and all", () => {
  expect(cases.length).toBeGreaterThan(100);
  expect(cases.filter((name) => fromR.has(`${name} weibull`)).length).toBeGreaterThan(90);
});

describe.each(cases)("%s", (name) => {
  const lives = livesOf(name);

  test("curve, Greenwood errors, log-log limits and cumulative hazard", () => {
    expect(lives.length).toBe(one(name, "lives"));
    expect(lives.filter((life) => life.event).length).toBe(one(name, "failures"));
    const curve = kaplanMeier(lives, { confidence: 0.95, interval: "log-log" });
    const hazard = nelsonAalen(lives, { confidence: 0.95, interval: "log" });
    if (one(name, "failures") === 0) return expect(curve.kind).toBe("no-events");
    if (curve.kind !== "curve" || hazard.kind !== "curve") throw new Error("no curve");
    expect(curve.steps.at(-1)?.age).toBe(expected(name, "surv").at(-1)?.age);
    for (const [index, { age, value }] of expected(name, "surv").entries()) {
      const step = curve.steps.find((other) => other.age === age);
      const rise = hazard.steps.find((other) => other.age === age);
      if (step === undefined || rise === undefined) throw new Error(`no step at ${age}`);
      const at = (quantity: string) => expected(name, quantity)[index]?.value ?? Number.NaN;
      expect(step.atRisk).toBe(at("n.risk"));
      expectClose(step.survival, value, 1e-9);
      expectClose(rise.cumulativeHazard, at("cumhaz"), 1e-9);
      expectClose(rise.standardError, at("std.chaz"), 1e-9);
      expect(step.limits.kind).toBe(value === 0 ? "no-limits" : "limits");
      if (step.limits.kind !== "limits") continue;
      expectClose(step.limits.standardError, at("std.err"), 1e-9);
      expectClose(step.limits.low, at("lower"), 1e-9);
      expectClose(step.limits.high, at("upper"), 1e-9);
    }
  });

  test.each(Object.keys(fits).filter((family) => fromR.has(`${name} ${family}`)))("%s", (family) => {
    expectFitOfR(`${name} ${family}`, lives);
  });
});

describe.each([
  ["rossi late entry", rossi],
  ["macs", macs],
])("%s: late entry in open data, with standard errors", (name, rows) => {
  test.each(Object.keys(fits))("%s", (family) => expectFitOfR(`${name} ${family}`, rows()));
});

function expectFitOfR(name: string, lives: readonly LifeRow[]): void {
  // The last word of a case is one of the three families, by the filter above.
  const family = name.slice(name.lastIndexOf(" ") + 1) as keyof typeof fits;
  const fit: FittedLife | { kind: "refused"; reason: string } = fits[family](lives, options);
  if (fit.kind === "refused") throw new Error(`refused: ${fit.reason}`);
  const { peak, covariance, sample } = fit.core;
  expectClose(fit.logLikelihood, one(name, "log_likelihood"), 1e-9);
  expectClose(Math.exp(peak.m) * sample.unit, Math.exp(one(name, "location")), 1e-6);
  expectClose(Math.exp(peak.s), one(name, "spread"), 1e-6);
  expectClose(covariance.mm, one(name, "location_variance"), 1e-6);
  if (family === "exponential") return;
  expectClose(covariance.ms, one(name, "covariance"), 1e-6);
  expectClose(covariance.ss, one(name, "log_spread_variance"), 1e-6);
}
