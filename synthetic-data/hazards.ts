import { componentLives, fuelOfComponent, hazardOfTheDemo } from "./component-lives";
import type { Model } from "./models";
import type { PlantedDefect } from "./planted-defects";
import { plantedDefects } from "./planted-defects";

/** Weibull life of one component in one model; scale in days of wear. */
export interface ComponentLife {
  readonly component: string;
  readonly shape: number;
  readonly scale: number;
  /** Defects planted on this component of this model. */
  readonly defects: readonly PlantedDefect[];
}

/** Lives of every component that the model has, without planted defects. */
export function livesOf(model: Model): readonly ComponentLife[] {
  const known = livesByModel.get(model.key);
  if (known !== undefined) return known;
  const lives = componentLives[model.productType]
    .filter(([component]) => (fuelOfComponent[component] ?? model.fuel) === model.fuel)
    .map(([component, shape, per100]): ComponentLife => {
      const cumulative = (per100 / 100) * hazardOfTheDemo * model.factor * (model.weaknesses[component] ?? 1);
      const defects = plantedDefects.filter((defect) => defect.model === model.key && defect.component === component);
      return { component, shape, scale: fiveYears / cumulative ** (1 / shape), defects };
    });
  livesByModel.set(model.key, lives);
  return lives;
}

/** Life in a unit made in that week: a defect multiplies the hazard, which shortens the scale and keeps the shape. */
export function lifeInUnit(
  life: ComponentLife,
  madeInWeek: number,
): { readonly shape: number; readonly scale: number } {
  const defect = life.defects.find(({ fromWeek, toWeek }) => madeInWeek >= fromWeek && madeInWeek <= toWeek);
  if (defect === undefined) return life;
  return { shape: life.shape, scale: life.scale / defect.multiplier ** (1 / life.shape) };
}

const fiveYears = 5 * 365.25;
const livesByModel = new Map<string, readonly ComponentLife[]>();
