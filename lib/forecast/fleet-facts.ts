import type { DayNumber } from "@/lib/calendar/day-number";
import type { ExposureCells } from "@/lib/failures/cells";
import { componentFlows } from "@/lib/failures/component-flows";
import { fewestFailuresForFit } from "@/lib/failures/component-life";
import { daysPerMonth } from "@/lib/failures/rate-question";
import type { LifeQuestion } from "@/lib/failures/visit-spells";
import { fitWeibull } from "@/lib/statistics/life/fit-weibull";
import type { FittedLife } from "@/lib/statistics/life/fitted-life";
import type { AgeGroup } from "./fleet";

export type FleetFacts =
  | {
      readonly kind: "fleet";
      /** Ages in days. */
      readonly fit: FittedLife;
      readonly failures: number;
      /** Ages in months. */
      readonly inService: readonly AgeGroup[];
      /** Chance that a unit leaves service in a month. */
      readonly leaving: number;
    }
  | { readonly kind: "no-units" }
  | { readonly kind: "too-few-failures"; readonly failures: number; readonly needed: number };

/** Groups of ages half a year wide: finer ones cost time and change nothing that could be seen. */
const groupMonths = 6;
/** Over so many months units that left are counted. */
const leavingMonths = 36;

/** How the components of a fleet live, how old those are that run now, and how fast units leave: all from counts. */
export function fleetFacts(cells: ExposureCells, question: LifeQuestion): FleetFacts {
  const inService = runningAges(cells, question);
  if (inService.length === 0) return { kind: "no-units" };
  const flows = componentFlows(cells, question);
  const failures = flows.events.reduce((sum, count) => sum + count, 0);
  const fit = fitWeibull(flows, {
    confidence: 0.9,
    minimumEvents: fewestFailuresForFit,
    failedAtZero: { within: 0.5 },
  });
  if (fit.kind === "refused") return { kind: "too-few-failures", failures, needed: fewestFailuresForFit };
  return { kind: "fleet", fit, failures, inService, leaving: leavingChance(cells, question) };
}

/** Lives that are still going on, of units that are still in service: those that were only cut off by today. */
function runningAges(cells: ExposureCells, question: LifeQuestion): readonly AgeGroup[] {
  const inService = {
    ...cells,
    windows: cells.windows.filter(({ retiredOn }) => retiredOn === undefined || retiredOn >= question.until),
    jobs: cells.jobs.filter(({ place }) => place?.retiredOn === undefined || place.retiredOn >= question.until),
  };
  const { ages, lost } = componentFlows(inService, question);
  const groups = new Map<number, number>();
  for (const [i, days] of ages.entries()) {
    const age = groupMonths * Math.round(days / daysPerMonth / groupMonths);
    groups.set(age, (groups.get(age) ?? 0) + (lost[i] ?? 0));
  }
  return [...groups].filter(([, units]) => units > 0).map(([age, units]) => ({ age, units }));
}

/** Units retired over unit-months in the last three years, half a retirement added; of the models that the question covers. */
function leavingChance(
  { windows, models, components }: ExposureCells,
  { component, where, until }: LifeQuestion,
): number {
  const types = components.find(({ key }) => key === component)?.productTypes ?? [];
  const asked = new Set(
    models
      .filter(({ maker, productType }) => types.includes(productType) && (where.maker ?? maker) === maker)
      .map(({ modelId }) => modelId),
  );
  const since: DayNumber = until - Math.round(leavingMonths * daysPerMonth);
  let [retired, days] = [0.5, 0];
  for (const { modelId, observedFrom, retiredOn, units } of windows) {
    if (!asked.has(modelId)) continue;
    const end = Math.min(retiredOn ?? until, until);
    days += units * Math.max(0, end - Math.max(observedFrom, since));
    if (retiredOn !== undefined && retiredOn >= since && retiredOn < until) retired += units;
  }
  return days === 0 ? 0 : Math.min(1, (retired * daysPerMonth) / days);
}
