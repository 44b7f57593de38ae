import type { ExposureCells } from "./cells";
import { inFleet } from "./groups";
import type { RateFilter } from "./rate-question";

/** The same counts without the models of a group, so that the group is not part of what it is measured against. */
export function restOfFleet(cells: ExposureCells, group: RateFilter): ExposureCells {
  return { ...cells, models: cells.models.filter((model) => !inFleet(cells, model, { where: group })) };
}
