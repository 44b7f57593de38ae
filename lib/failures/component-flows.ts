import type { AgeFlows } from "@/lib/statistics/survival/age-flows";
import type { ExposureCells } from "./cells";
import { type LifeQuestion, visitSpells } from "./visit-spells";

/**
 * How many lives of one component entered, failed and were lost at each age in days: all that curves and fitted lives
 * need. Ages are whole or half days, so that they can number the places of an array; the cost is one addition per
 * window and per failure, however many units stand behind them.
 * Checked: tests/failures/component-flows.test.ts, against the flows of rows built unit by unit.
 */
export function componentFlows(cells: ExposureCells, question: LifeQuestion): AgeFlows {
  const found = new HalfDays();
  visitSpells(cells, question, (entry, exit, event, count) => {
    if (exit >= found.lost.length) found.grow(exit);
    found.entered[entry] = (found.entered[entry] ?? 0) + count;
    const leaving = event ? found.events : found.lost;
    leaving[exit] = (leaving[exit] ?? 0) + count;
  });
  return found.flows();
}

/** Three columns by twice the age; they grow as older ages come. Twenty years to begin with. */
class HalfDays {
  entered = new Float64Array(2 * 7305);
  events = new Float64Array(2 * 7305);
  lost = new Float64Array(2 * 7305);

  grow(place: number): void {
    const grown = (column: Float64Array) => {
      const wider = new Float64Array(2 * place);
      wider.set(column);
      return wider;
    };
    this.entered = grown(this.entered);
    this.events = grown(this.events);
    this.lost = grown(this.lost);
  }

  /** The ages at which anything happened; what was taken away again did not. */
  flows(): AgeFlows {
    const { entered, events, lost } = this;
    const places = [...lost.keys()].filter((place) => entered[place] || events[place] || lost[place]);
    const pick = (column: Float64Array) => Float64Array.from(places, (place) => column[place] ?? 0);
    return {
      ages: Float64Array.from(places, (place) => place / 2),
      entered: pick(entered),
      events: pick(events),
      lost: pick(lost),
    };
  }
}
