import { addDays, type Day, toPlainDate } from "./day";

/**
 * The day itself, or the next one that is neither Saturday, Sunday nor one of the holidays given.
 * Only for clocks that say so: a private filing window does not roll by itself.
 * Source: Fed. R. Civ. P. 6(a)(1)(C) and Regulation 1182/71 art. 3(4), each limited to its own scope.
 */
export function rollToBusinessDay(on: Day, holidays: ReadonlySet<Day>): Day {
  let rolled = on;
  while (toPlainDate(rolled).dayOfWeek > 5 || holidays.has(rolled)) rolled = addDays(rolled, 1);
  return rolled;
}
