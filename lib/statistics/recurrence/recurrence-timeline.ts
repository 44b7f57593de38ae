import { requireHistories, type UnitHistory } from "./unit-history";

/** The distinct event ages, ascending, and who was watched and hit at each. */
export interface RecurrenceTimeline {
  readonly moments: readonly RecurrenceMoment[];
  /** Largest age at which any unit was still watched. */
  readonly lastAge: number;
  /** Units in all. */
  readonly units: number;
  /** Distinct histories; `hits` and `leaving` refer to them by number. */
  readonly histories: number;
}

export interface RecurrenceMoment {
  readonly age: number;
  readonly atRisk: number;
  /** Events of all units at this age. */
  readonly events: number;
  /** Their sizes added up. */
  readonly size: number;
  /** Histories hit at this age; several events of one unit are added into one hit. */
  readonly hits: readonly RecurrenceHit[];
  /** Histories at risk here and no longer at the next moment. */
  readonly leaving: readonly RecurrenceHistory[];
}

export interface RecurrenceHistory {
  readonly history: number;
  readonly count: number;
  /** Number of the first moment at which this history is at risk. */
  readonly firstMoment: number;
}

export interface RecurrenceHit extends RecurrenceHistory {
  readonly size: number;
}

/** @throws RangeError for histories that cannot be */
export function recurrenceTimeline(histories: readonly UnitHistory[]): RecurrenceTimeline {
  requireHistories(histories);
  const known = histories.filter(({ count }) => count > 0);
  const ages = Float64Array.from(new Set(known.flatMap(({ events }) => events.map((event) => event.age)))).sort();
  const moments = Array.from(ages, (age) => ({
    age,
    arriving: 0,
    atRisk: 0,
    events: 0,
    size: 0,
    hits: [] as RecurrenceHit[],
    leaving: [] as RecurrenceHistory[],
  }));
  known.forEach(({ entry, exit, count, events }, history) => {
    const firstMoment = entry === 0 ? 0 : firstAbove(ages, entry);
    const past = firstAbove(ages, exit);
    if (past === firstMoment) return;
    const arrival = moments[firstMoment];
    if (arrival !== undefined) arrival.arriving += count;
    const one = { history, count, firstMoment };
    moments[past - 1]?.leaving.push(one);
    const sizes = new Map<number, number>();
    for (const event of events) {
      sizes.set(event.age, (sizes.get(event.age) ?? 0) + event.size);
      const moment = moments[firstAbove(ages, event.age) - 1];
      if (moment !== undefined) moment.events += count;
    }
    for (const [age, size] of sizes) {
      const moment = moments[firstAbove(ages, age) - 1];
      if (moment === undefined) continue;
      moment.hits.push({ ...one, size });
      moment.size += count * size;
    }
  });
  let watched = 0;
  for (const moment of moments) {
    watched += moment.arriving;
    moment.atRisk = watched;
    watched -= moment.leaving.reduce((sum, { count }) => sum + count, 0);
  }
  return {
    moments,
    lastAge: known.reduce((latest, { exit }) => Math.max(latest, exit), 0),
    units: known.reduce((sum, { count }) => sum + count, 0),
    histories: known.length,
  };
}

/** Number of ages not above `age`: where the first one above it stands. */
function firstAbove(ages: Float64Array, age: number): number {
  let low = 0;
  let high = ages.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((ages[middle] ?? 0) <= age) low = middle + 1;
    else high = middle;
  }
  return low;
}
