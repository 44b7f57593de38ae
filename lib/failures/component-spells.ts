import type { LifeRow } from "@/lib/statistics/survival/life-rows";
import type { ExposureCells, JobCell, JobPlace } from "./cells";
import { inFleet } from "./groups";
import { placeJob } from "./observation";
import type { RateQuestion } from "./rate-question";

/** One component of the models that the question covers. */
export interface LifeQuestion extends Omit<RateQuestion, "by" | "counting"> {
  readonly component: string;
}

/**
 * The lives of one component, in whole days of its own age: it begins with the unit, ends by failure, and the part that
 * replaces it begins again at 0. Made from counts alone: every unit starts as one unbroken life, and each failure
 * cuts a life in two. A life that was already going on when watching began enters late, half a day before, so that
 * a failure on the first watched day is seen.
 * Checked: tests/failures/component-spells.test.ts, against lives built unit by unit.
 */
export function componentSpells(cells: ExposureCells, question: LifeQuestion): LifeRow[] {
  const asked = new Map(
    cells.models.map((model) => [
      model.modelId,
      inFleet(cells, model, { where: { ...question.where, component: question.component } }),
    ]),
  );
  const rows = new Map<string, LifeRow>();
  for (const window of cells.windows) {
    if (asked.get(window.modelId))
      addSpell(rows, { place: window, from: window.inServiceOn, event: false }, question, window.units);
  }
  for (const cell of cells.jobs) {
    const { place } = cell;
    if (
      place === undefined ||
      !asked.get(cell.modelId) ||
      cell.component !== question.component ||
      cell.countedAs !== "failure"
    )
      continue;
    if (placeJob(place, cell.failedOn, question) !== "counted") continue;
    const from = beginningOf(cell, place, question);
    addSpell(rows, { place, from, event: false }, question, -cell.jobs);
    addSpell(rows, { place, from, until: cell.failedOn, event: matches(cell, question) }, question, cell.jobs);
    addSpell(rows, { place, from: cell.failedOn, event: false }, question, cell.jobs);
  }
  return [...rows.values()].filter((row) => row.count > 0);
}

/** A failure outside the watched time was not seen, so the life that it ended is not known to have ended. */
function beginningOf(cell: JobCell, place: JobPlace, question: LifeQuestion): number {
  const previous = cell.previousFailedOn;
  return previous !== undefined && placeJob(place, previous, question) === "counted" ? previous : place.inServiceOn;
}

function matches(cell: JobCell, { where }: LifeQuestion): boolean {
  return where.symptom === undefined || where.symptom === cell.symptom;
}

interface Spell {
  readonly place: JobPlace;
  /** Day on which the component began. */
  readonly from: number;
  /** Day of its failure; without one it lasts as long as the unit is watched. */
  readonly until?: number;
  readonly event: boolean;
}

function addSpell(
  rows: Map<string, LifeRow>,
  { place, from, until, event }: Spell,
  question: LifeQuestion,
  count: number,
): void {
  const watchedFrom = Math.max(place.observedFrom, question.from ?? Number.NEGATIVE_INFINITY);
  const end = until ?? Math.min(place.retiredOn ?? Number.POSITIVE_INFINITY, question.until);
  if (end < watchedFrom || end < from || (end === from && !event)) return; // a life of no length was never at risk
  const entry = watchedFrom > from ? watchedFrom - from - 0.5 : 0;
  const exit = end - from;
  const key = `${entry} ${exit} ${event}`;
  rows.set(key, { entry, exit, event, count: (rows.get(key)?.count ?? 0) + count });
}
