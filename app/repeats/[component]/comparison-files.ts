import type { GroupComparison } from "@/lib/failures/compare-groups";
import { daysPerYear } from "@/lib/failures/rate-question";
import { rateGroups, ratioRows } from "./comparison-rows";
import { curveHeader, curveRow, type LifeFile, repeatHeader, repeatRow } from "./life-files";

/** The files of a comparison, by their names in the address. */
export const comparisonFiles: Readonly<Record<string, (comparison: GroupComparison) => LifeFile>> = {
  "rates.csv": ratesFile,
  "curves.csv": ({ first, second }) => ({
    header: ["group", ...curveHeader],
    rows: [first, second].flatMap(({ name, life }) =>
      life.curve.kind === "curve" ? life.curve.steps.map((step) => [name, ...curveRow(step)]) : [],
    ),
  }),
  "repeats.csv": ({ first, second }) => ({
    header: ["group", ...repeatHeader],
    rows: [first, second].flatMap(({ name, life }) =>
      life.recurrence.kind === "curve" ? life.recurrence.steps.map((step) => [name, ...repeatRow(step)]) : [],
    ),
  }),
};

/** Rates, ratios, and the ages that they were made from. */
function ratesFile(comparison: GroupComparison): LifeFile {
  const ages = comparison.ages.flatMap(({ band, first, second, expected }) => [
    [`failures and unit-years, age ${band.key} months`, comparison.first.name, first.events, first.exposure],
    [`failures and unit-years, age ${band.key} months`, comparison.second.name, second.events, second.exposure],
    [`expected of the first, age ${band.key} months`, comparison.first.name, undefined, expected],
  ]);
  return {
    header: [
      "quantity",
      "of",
      "events",
      "unit_years_or_expected",
      "value",
      "low",
      "high",
      "level",
      "method",
      "probability",
    ],
    rows: [
      ...rateGroups(comparison).map(({ label, estimate: { events, n, point, lo, hi, level, method } }) => [
        "failures per 100 unit-years",
        label,
        events,
        n,
        100 * point,
        100 * lo,
        100 * hi,
        level,
        method,
      ]),
      ...ratioRows(comparison).map(({ label, outcome, probability }) => {
        if (outcome.kind === "none") return ["ratio", `${label}: ${outcome.why}`];
        const { events, n, point, lo, hi, level, method } = outcome.estimate;
        return ["ratio", label, events, n, point, lo, hi, level, method, probability];
      }),
      ...ages,
      ...comparison.repeatsByAge.map((entry) => [
        `difference in failures per unit by ${Math.round(entry.age / daysPerYear)} years`,
        "first less second",
        undefined,
        undefined,
        ...(entry.kind === "difference" ? [entry.difference, entry.low, entry.high] : [entry.kind]),
      ]),
    ],
  };
}
