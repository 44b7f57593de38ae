import { type BandedFitTest, bandedFitTest } from "@/lib/statistics/life/banded-fit-test";
import { type FailureAge, failureAge } from "@/lib/statistics/life/failure-age";
import { failureProbability } from "@/lib/statistics/life/failure-probability";
import { fitExponential } from "@/lib/statistics/life/fit-exponential";
import type { RefusedFit } from "@/lib/statistics/life/fit-location-scale";
import { fitLognormal } from "@/lib/statistics/life/fit-lognormal";
import type { WeibullFit } from "@/lib/statistics/life/fit-weibull";
import type { FittedLife } from "@/lib/statistics/life/fitted-life";
import type { AgeFlows } from "@/lib/statistics/survival/age-flows";
import { daysPerYear } from "./rate-question";

/** What a fitted Weibull life says of one component, and how far it can be believed. */
export interface LifeModel {
  readonly kind: "model";
  readonly weibull: WeibullFit;
  /** Age in days by which 10 in 100 fail. */
  readonly tenth: FailureAge;
  /** Chance of having failed by 1, 2, 5 and 10 years, with limits by profile likelihood. */
  readonly chances: readonly ModelChance[];
  /** The smooth line: chance of having failed at ages in days, from 0 to the oldest age watched. */
  readonly line: readonly { readonly age: number; readonly failed: number }[];
  /** The other shapes on the same lives; the smaller criterion fits better. */
  readonly checks: readonly ModelCheck[];
  readonly follows: BandedFitTest;
  /** Oldest age in days at which anything was watched: beyond it the model has nothing to lean on. */
  readonly lastAge: number;
}

export interface ModelChance {
  readonly years: number;
  readonly failed: number;
  readonly low: number;
  readonly high: number;
  /** True where no part was watched to that age. */
  readonly beyondData: boolean;
}

export type ModelCheck =
  | { readonly kind: "fitted"; readonly family: FittedLife["family"]; readonly aic: number; readonly behind: number }
  | { readonly kind: "refused"; readonly family: FittedLife["family"] };

const chosenYears = [1, 2, 5, 10];
const lineSteps = 60;
/** Failures that each band of the fit test must expect at least; common practice for chi-square tests. */
export const fewestPerBand = 5;

/**
 * @param flows   the very lives that were fitted
 * @param lastAge oldest age in days at which anything was watched, above 0
 * Checked: tests/failures/life-model.test.ts.
 */
export function lifeModel(flows: AgeFlows, weibull: WeibullFit | RefusedFit, lastAge: number): LifeModel | RefusedFit {
  if (weibull.kind === "refused") return weibull;
  const { confidence } = weibull;
  return {
    kind: "model",
    weibull,
    tenth: failureAge(weibull, { fraction: 0.1, confidence, interval: "profile" }),
    chances: chosenYears.map((years) => {
      const age = years * daysPerYear;
      const { probability, low, high } = failureProbability(weibull, { age, confidence, interval: "profile" });
      return { years, failed: probability, low, high, beyondData: age > lastAge };
    }),
    line: Array.from({ length: lineSteps + 1 }, (_, step) => {
      const age = (lastAge * step) / lineSteps;
      return { age, failed: step === 0 ? 0 : chanceAt(weibull, age) };
    }),
    checks: modelChecks(flows, weibull),
    follows: bandedFitTest(weibull, flows, { fewest: fewestPerBand }),
    lastAge,
  };
}

/** The point alone; the quicker limits that come with it are not used. */
function chanceAt(weibull: WeibullFit, age: number): number {
  return failureProbability(weibull, { age, confidence: weibull.confidence, interval: "delta" }).probability;
}

function modelChecks(flows: AgeFlows, weibull: WeibullFit): ModelCheck[] {
  const options = { confidence: weibull.confidence, minimumEvents: 1, failedAtZero: failedOnFirstDay };
  const others = [
    { family: "exponential" as const, fit: fitExponential(flows, options) },
    { family: "lognormal" as const, fit: fitLognormal(flows, options) },
  ];
  const found = [{ family: "weibull" as const, fit: weibull }, ...others];
  const best = Math.min(...found.flatMap(({ fit }) => (fit.kind === "fitted" ? [fit.aic] : [])));
  return found.map(({ family, fit }) =>
    fit.kind === "fitted"
      ? { kind: "fitted", family, aic: fit.aic, behind: fit.aic - best }
      : { kind: "refused", family },
  );
}

/** A failure on the day itself counts as within the first half day: the logarithm of age 0 has no value. */
export const failedOnFirstDay = { within: 0.5 };
