import type { AgeFlows } from "@/lib/statistics/survival/age-flows";
import type { ExposureCells } from "./cells";
import { type LifeQuestion, visitSpells } from "./visit-spells";

/**
 * How many lives of one component entered, failed and were lost at each age in days: all that curves and fitted lives
 * need. Ages are whole or half days, so that they can number the places of an array; the cost is one addition per
 * window and per failure, however many units stand behind them.
 * Checked: tests/failures/component-spells.test.ts and tests/db/counts-equal-rows.test.ts, against lives cut unit by unit.
 */
export function componentFlows(cells: ExposureCells, question: LifeQuestion): AgeFlows {
  let [entered, events, lost] = [column(), column(), column()];
  visitSpells(cells, question, (entry, exit, event, count) => {
    if (exit >= lost.length) {
      entered = column(2 * exit, entered);
      events = column(2 * exit, events);
      lost = column(2 * exit, lost);
    }
    entered[entry] = (entered[entry] ?? 0) + count;
    const leaving = event ? events : lost;
    leaving[exit] = (leaving[exit] ?? 0) + count;
  });
  return flowsOf({ entered, events, lost });
}

/** One number for each half day of age, twenty years to begin with; longer, it keeps what it held. */
function column(places = 2 * 7305, held?: Float64Array): Float64Array {
  const longer = new Float64Array(places);
  if (held !== undefined) longer.set(held);
  return longer;
}

/** The ages at which anything happened; what was taken away again did not. */
function flowsOf({ entered, events, lost }: Omit<AgeFlows, "ages">): AgeFlows {
  const places = [...lost.keys()].filter((place) => entered[place] || events[place] || lost[place]);
  const pick = (held: Float64Array) => Float64Array.from(places, (place) => held[place] ?? 0);
  return {
    ages: Float64Array.from(places, (place) => place / 2),
    entered: pick(entered),
    events: pick(events),
    lost: pick(lost),
  };
}
