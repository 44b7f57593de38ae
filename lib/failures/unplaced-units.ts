import type { ExposureCells, UnplacedReason } from "./cells";
import { inFleet } from "./groups";
import type { RateFilter } from "./rate-question";

/** Units of the models asked about that carry no exposure, by reason, the commonest first. */
export function unplacedUnits(
  cells: ExposureCells,
  where: RateFilter,
): readonly { readonly reason: UnplacedReason; readonly units: number }[] {
  const asked = new Set(cells.models.filter((model) => inFleet(cells, model, { where })).map(({ modelId }) => modelId));
  const counts = new Map<UnplacedReason, number>();
  for (const { modelId, reason, units } of cells.unplaced) {
    if (asked.has(modelId)) counts.set(reason, (counts.get(reason) ?? 0) + units);
  }
  return [...counts].map(([reason, units]) => ({ reason, units })).sort((a, b) => b.units - a.units);
}
