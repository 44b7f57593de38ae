import type { LifeRow } from "@/lib/statistics/survival/life-rows";
import type { ExposureCells } from "./cells";
import { type LifeQuestion, visitSpells } from "./visit-spells";

/**
 * The lives of one component as rows, each kind of life once: for reading and for checks. `componentFlows` says the same
 * in fewer numbers and much sooner.
 * Checked: tests/failures/component-spells.test.ts, against lives built unit by unit.
 */
export function componentSpells(cells: ExposureCells, question: LifeQuestion): LifeRow[] {
  const rows = new Map<string, LifeRow>();
  visitSpells(cells, question, (entry, exit, event, count) => {
    const key = `${entry} ${exit} ${event}`;
    rows.set(key, { entry: entry / 2, exit: exit / 2, event, count: (rows.get(key)?.count ?? 0) + count });
  });
  return [...rows.values()].filter((row) => row.count > 0);
}
