import type { ExposureCells } from "./cells";
import { inFleet } from "./groups";
import { observedAges } from "./observation";
import type { LifeQuestion } from "./visit-spells";

/**
 * Youngest age in days at which any unit of the question was watched: above 0 where all were already in service when
 * records began, so that nothing is known of what happened to them before. Undefined where nothing was watched.
 */
export function firstWatchedAge(cells: ExposureCells, question: LifeQuestion): number | undefined {
  const where = { ...question.where, component: question.component };
  const asked = new Set(cells.models.filter((model) => inFleet(cells, model, { where })).map(({ modelId }) => modelId));
  let first: number | undefined;
  for (const window of cells.windows) {
    const ages = asked.has(window.modelId) && window.units > 0 ? observedAges(window, question) : undefined;
    if (ages !== undefined && (first === undefined || ages.entry < first)) first = ages.entry;
  }
  return first;
}
