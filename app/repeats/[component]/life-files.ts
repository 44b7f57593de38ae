import type { LifeDetail } from "@/lib/failures/life-detail";
import { daysPerYear } from "@/lib/failures/rate-question";
import type { CsvCell } from "@/lib/format/csv-text";
import type { RecurrenceStep } from "@/lib/statistics/recurrence/mean-cumulative-function";
import type { SurvivalStep } from "@/lib/statistics/survival/kaplan-meier";

/** A table to keep: what one drawing shows, every step of it. */
export interface LifeFile {
  readonly header: readonly string[];
  readonly rows: readonly (readonly CsvCell[])[];
}

/** The files of a component's page, by their names in the address. */
export const lifeFiles: Readonly<Record<string, (life: LifeDetail) => LifeFile>> = {
  "curve.csv": (life) => ({
    header: curveHeader,
    rows: life.curve.kind === "curve" ? life.curve.steps.map(curveRow) : [],
  }),
  "age-bands.csv": ageBandsFile,
  "fitted-life.csv": fittedLifeFile,
  "repeat-failures.csv": ({ recurrence }) => ({
    header: repeatHeader,
    rows: recurrence.kind === "curve" ? recurrence.steps.map(repeatRow) : [],
  }),
};

export const curveHeader = ["age_days", "at_risk", "failed", "share_failed", "low", "high"];

export function curveRow({ age, atRisk, events, survival, limits }: SurvivalStep): readonly CsvCell[] {
  const range = limits.kind === "limits" ? [1 - limits.high, 1 - limits.low] : [undefined, undefined];
  return [age, atRisk, events, 1 - survival, ...range];
}

export const repeatHeader = ["age_days", "units_watched", "failures", "failures_per_unit", "low", "high"];

export function repeatRow({ age, atRisk, events, mean, limits }: RecurrenceStep): readonly CsvCell[] {
  const range = limits.kind === "limits" ? [limits.low, limits.high] : [undefined, undefined];
  return [age, atRisk, events, mean, ...range];
}

function ageBandsFile({ hazards }: LifeDetail): LifeFile {
  return {
    header: [
      "from_days",
      "until_days",
      "at_start",
      "entered",
      "failed",
      "lost",
      "years_lived",
      "failures_per_100_years",
      "low",
      "high",
      "share_surviving_at_end",
    ],
    rows: hazards.map(({ band, lives, estimate, failed, years }) => [
      band.fromDay,
      Number.isFinite(band.untilDay) ? band.untilDay : undefined,
      lives?.atStart,
      lives?.entered,
      failed,
      lives?.lost,
      years,
      ...(estimate === undefined
        ? [undefined, undefined, undefined]
        : [100 * estimate.point, 100 * estimate.lo, 100 * estimate.hi]),
      lives?.survivalAtEnd,
    ]),
  };
}

/** Parameters, chances and checks one under the other, since each is a number with its range. */
function fittedLifeFile({ model }: LifeDetail): LifeFile {
  const header = ["quantity", "value", "low", "high", "failures", "lives"];
  if (model.kind === "refused")
    return {
      header,
      rows: [[`not fitted: ${model.reason}`, undefined, undefined, undefined, model.events, model.lives]],
    };
  const { weibull, tenth, chances, checks, follows } = model;
  const bound = (end: number | "unbounded", unit: number) => (end === "unbounded" ? end : end / unit);
  const counts = [weibull.events, weibull.lives];
  return {
    header,
    rows: [
      [
        "weibull_shape",
        weibull.shape.value,
        bound(weibull.shape.profile.low, 1),
        bound(weibull.shape.profile.high, 1),
        ...counts,
      ],
      [
        "weibull_scale_years",
        weibull.scale.value / daysPerYear,
        bound(weibull.scale.profile.low, daysPerYear),
        bound(weibull.scale.profile.high, daysPerYear),
        ...counts,
      ],
      [
        "ten_in_100_failed_by_years",
        tenth.age / daysPerYear,
        bound(tenth.low, daysPerYear),
        bound(tenth.high, daysPerYear),
        ...counts,
      ],
      ...chances.map(({ years, failed, low, high, beyondData }) => [
        `share_failed_by_${years}_years${beyondData ? "_beyond_data" : ""}`,
        failed,
        low,
        high,
        ...counts,
      ]),
      ...checks.map((check) => [
        `aic_${check.family}`,
        check.kind === "fitted" ? check.aic : undefined,
        undefined,
        undefined,
        ...counts,
      ]),
      [
        "fit_test_probability",
        follows.kind === "tested" ? follows.probability : undefined,
        undefined,
        undefined,
        ...counts,
      ],
    ],
  };
}
