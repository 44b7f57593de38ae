import type { RefusedFit } from "@/lib/statistics/life/fit-location-scale";
import type { AgeFlows } from "@/lib/statistics/survival/age-flows";
import { type AgeHazard, ageHazards } from "./age-hazards";
import type { ExposureCells } from "./cells";
import { componentFlows } from "./component-flows";
import { type ComponentLife, componentLife } from "./component-life";
import { firstWatchedAge } from "./first-watched-age";
import { type LifeModel, lifeModel } from "./life-model";
import { daysPerYear } from "./rate-question";
import type { LifeQuestion } from "./visit-spells";

/** The life of a component with all that its own page shows beside the curve. */
export interface LifeDetail extends ComponentLife {
  /** Time lived by all parts together, in years: what the failures are divided by. */
  readonly years: number;
  readonly hazards: readonly AgeHazard[];
  /** Youngest age in days at which a unit was watched; failures per unit count from there. */
  readonly unitsFromAge: number;
  /** Youngest age in days at which a part was watched; shares are of the parts that came to it. */
  readonly partsFromAge: number;
  readonly model: LifeModel | RefusedFit;
}

export function lifeDetail(cells: ExposureCells, question: LifeQuestion): LifeDetail {
  const life = componentLife(cells, question);
  const flows = componentFlows(cells, question);
  return {
    ...life,
    years: daysLived(flows) / daysPerYear,
    hazards: ageHazards(flows, question.level),
    unitsFromAge: firstWatchedAge(cells, question) ?? 0,
    partsFromAge: flows.ages.find((_, i) => (flows.entered[i] ?? 0) > 0) ?? 0,
    model: lifeModel(flows, life.weibull, life.curve.kind === "no-exposure" ? 0 : life.curve.lastAge),
  };
}

/** Everybody lives from entry to exit: the sum of the exit ages less that of the entry ages. */
function daysLived({ ages, entered, events, lost }: AgeFlows): number {
  return ages.reduce((sum, age, i) => sum + age * ((events[i] ?? 0) + (lost[i] ?? 0) - (entered[i] ?? 0)), 0);
}
