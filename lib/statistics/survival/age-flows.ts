import { type LifeColumns, type LifeRow, visitLives } from "./life-rows";

/**
 * How many lives entered, failed and were lost at each age: everything that any estimator in this folder and in
 * `life` needs to know about the rows, in a few thousand numbers however many lives there are.
 * All arrays have one length; entry i of each belongs to ages[i].
 */
export interface AgeFlows {
  /** Distinct ages, ascending, 0 or more. */
  readonly ages: Float64Array;
  /** Lives whose watching began at this age; those at age 0 are at risk from the start, age 0 included. */
  readonly entered: Float64Array;
  /** Lives that failed at this age. */
  readonly events: Float64Array;
  /** Lives that stopped being watched at this age without failing; they were still at risk at this age. */
  readonly lost: Float64Array;
}

/** Rows, columns, or flows counted elsewhere (for example kept in a database). */
export type LifeSource = readonly LifeRow[] | LifeColumns | AgeFlows;

/**
 * Counts the rows by age; flows pass through after a check that nobody leaves who had not entered.
 * @throws RangeError for rows or flows that cannot be
 * Checked: tests/statistics/survival/age-flows.test.ts, against the definition applied row by row.
 */
export function ageFlows(source: LifeSource): AgeFlows {
  if ("ages" in source) return checkedFlows(source);
  const places = new Map<number, number>();
  const ages: number[] = [];
  const entered: number[] = [];
  const events: number[] = [];
  const lost: number[] = [];
  const placeOf = (age: number): number => {
    const known = places.get(age);
    if (known !== undefined) return known;
    places.set(age, ages.length);
    entered.push(0);
    events.push(0);
    lost.push(0);
    return ages.push(age) - 1;
  };
  visitLives(source, (entry, exit, event, count) => {
    const start = placeOf(entry);
    entered[start] = (entered[start] ?? 0) + count;
    const end = placeOf(exit);
    const leaving = event ? events : lost;
    leaving[end] = (leaving[end] ?? 0) + count;
  });
  const order = Float64Array.from(ages).sort();
  const sorted = (column: readonly number[]): Float64Array => order.map((age) => column[places.get(age) ?? 0] ?? 0);
  return { ages: order, entered: sorted(entered), events: sorted(events), lost: sorted(lost) };
}

/** Lives at risk at each age of the flows: entered before it (or at age 0) and not gone before it. */
export function atRiskByAge({ ages, entered, events, lost }: AgeFlows): Float64Array {
  let watched = 0;
  return ages.map((age, i) => {
    const arriving = entered[i] ?? 0;
    const here = age === 0 ? watched + arriving : watched;
    watched += arriving - (events[i] ?? 0) - (lost[i] ?? 0);
    return here;
  });
}

function checkedFlows(flows: AgeFlows): AgeFlows {
  const { ages, entered, events, lost } = flows;
  if (entered.length !== ages.length || events.length !== ages.length || lost.length !== ages.length) {
    throw new RangeError(
      `ages, entered, events and lost must have one length; they have ${ages.length}, ${entered.length}, ${events.length} and ${lost.length}`,
    );
  }
  let before = -1;
  ages.forEach((age, i) => {
    if (!(age > before && age >= 0 && age < Number.POSITIVE_INFINITY)) {
      throw new RangeError(`ages must be finite, 0 or more and ascending without ties; ages[${i}] is ${age}`);
    }
    before = age;
    for (const [name, column] of [
      ["entered", entered],
      ["events", events],
      ["lost", lost],
    ] as const) {
      const count = column[i] ?? 0;
      if (!Number.isSafeInteger(count) || count < 0) {
        throw new RangeError(`${name}[${i}] must be a whole number, 0 or more; it is ${count}`);
      }
    }
  });
  atRiskByAge(flows).forEach((watched, i) => {
    if ((events[i] ?? 0) + (lost[i] ?? 0) > watched) {
      throw new RangeError(
        `${(events[i] ?? 0) + (lost[i] ?? 0)} lives leave at ages[${i}], where only ${watched} are at risk`,
      );
    }
  });
  return flows;
}
