import type { ExposureCells, JobCell, JobPlace } from "./cells";
import { inFleet } from "./groups";
import { placeJob } from "./observation";
import type { RateQuestion } from "./rate-question";

/** One component of the models that the question covers. */
export interface LifeQuestion extends Omit<RateQuestion, "by" | "counting"> {
  readonly component: string;
}

/** Ages in half days, whole numbers; a count below 0 takes away lives that were handed over before, or will be. */
export type SpellVisitor = (entry: number, exit: number, event: boolean, count: number) => void;

/** Earlier than any day on record; a whole number, as all that is computed here, which keeps the arithmetic quick. */
const longAgo = -1_000_000_000;

/**
 * Hands over the lives of one component by its own age: it begins with the unit, ends by failure, and the
 * part that replaces it begins again at 0. Made from counts alone: every unit starts as one unbroken life, and each
 * failure cuts a life in two. A life that was already going on when watching began enters late, half a day before, so
 * that a failure on the first watched day is seen.
 */
export function visitSpells(cells: ExposureCells, question: LifeQuestion, visit: SpellVisitor): void {
  const asked = askedModels(cells, question);
  visitUnits(cells, asked, question, visit);
  const { unbroken, between } = spellsOf(question, visit);
  for (const cell of cells.jobs) {
    const { place, component, countedAs } = cell;
    if (component !== question.component || countedAs !== "failure" || place === undefined) continue;
    if (!asked.has(cell.modelId) || !isKnown(place, cell.failedOn, question)) continue;
    const from = beginningOf(cell, place, question);
    unbroken(place, from, -cell.jobs);
    between(place, from, cell.failedOn, matches(cell, question), cell.jobs);
    unbroken(place, cell.failedOn, cell.jobs);
  }
}

/** One unbroken life for each unit. The same as `unbroken` below, written out: a register can hold millions of windows. */
function visitUnits(
  { windows }: ExposureCells,
  asked: ReadonlySet<number>,
  { until: cutOff, from: opening = longAgo }: LifeQuestion,
  visit: SpellVisitor,
): void {
  let model = Number.NaN;
  let wanted = false;
  for (const { modelId, inServiceOn, observedFrom, retiredOn, units } of windows) {
    // The rows of one model lie together.
    if (modelId !== model) {
      model = modelId;
      wanted = asked.has(modelId);
    }
    if (!wanted) continue;
    const watchedFrom = observedFrom > opening ? observedFrom : opening;
    const end = retiredOn !== undefined && retiredOn < cutOff ? retiredOn : cutOff;
    if (end < watchedFrom || end <= inServiceOn) continue;
    visit(watchedFrom > inServiceOn ? 2 * (watchedFrom - inServiceOn) - 1 : 0, 2 * (end - inServiceOn), false, units);
  }
}

function askedModels(cells: ExposureCells, { where, component }: LifeQuestion): ReadonlySet<number> {
  return new Set(
    cells.models
      .filter((model) => inFleet(cells, model, { where: { ...where, component } }))
      .map((model) => model.modelId),
  );
}

/**
 * Whether a failure is on record at the cut-off. One before the period that is looked at is no event, but it is known that
 * the part was replaced then, so the part that enters the period is as young as it is.
 */
function isKnown(place: JobPlace, failedOn: number, { until }: LifeQuestion): boolean {
  return placeJob(place, failedOn, { from: undefined, until }) === "counted";
}

/** A failure before records begin was not seen, so the life that it ended is not known to have ended. */
function beginningOf(cell: JobCell, place: JobPlace, question: LifeQuestion): number {
  const previous = cell.previousFailedOn;
  return previous !== undefined && isKnown(place, previous, question) ? previous : place.inServiceOn;
}

function matches(cell: JobCell, { where }: LifeQuestion): boolean {
  return where.symptom === undefined || where.symptom === cell.symptom;
}

/** Arguments in a row and no object for each: these run once for every window and failure of a register. */
function spellsOf({ until: cutOff, from: opening = longAgo }: LifeQuestion, visit: SpellVisitor) {
  const endOf = ({ retiredOn }: JobPlace) => (retiredOn !== undefined && retiredOn < cutOff ? retiredOn : cutOff);
  /** A life that began on the day `from` and ended on the day `end`; one of no length was never at risk. */
  const between = (place: JobPlace, from: number, end: number, event: boolean, count: number): void => {
    const watchedFrom = Math.max(place.observedFrom, opening);
    if (end < watchedFrom || end < from || (end === from && !event)) return;
    visit(watchedFrom > from ? 2 * (watchedFrom - from) - 1 : 0, 2 * (end - from), event, count);
  };
  return {
    /** As long as its unit is watched. */
    unbroken: (place: JobPlace, from: number, count: number) => between(place, from, endOf(place), false, count),
    between,
  };
}
