// Rates and what ages predict, added up unit by unit: shares no code with counts, cells or lib/failures.
import { daysPerYear } from "@/lib/failures/rate-question";
import type { RawQuestion, RawUnit } from "./raw-lives";

/** Ages in days at which the usual bands begin: months of 30.4375 days, rounded up. */
const bandStarts = [0, 366, 731, 1096, 1827, 2922, Number.POSITIVE_INFINITY];

interface Watched {
  /** Years from the first to the last watched day. */
  readonly exposure: number;
  readonly events: number;
}

/** The unit's watched years and failures, all ages together and band by band; undefined where it was not watched a day. */
export function rawRate(unit: RawUnit, question: RawQuestion): { whole: Watched; bands: Watched[] } | undefined {
  const { component, from, until } = question;
  const opens = Math.max(unit.watched, from ?? unit.watched);
  const closes = Math.min(unit.retired ?? until, until);
  if (closes <= opens) return undefined;
  const ages = unit.failures
    .filter((failure) => failure.component === component)
    .filter(({ on }) => on >= opens && on < until && on <= (unit.retired ?? on))
    .map(({ on }) => on - unit.begun);
  const within = (low: number, high: number): Watched => ({
    exposure: Math.max(0, Math.min(closes - unit.begun, high) - Math.max(opens - unit.begun, low)) / daysPerYear,
    events: ages.filter((age) => age >= low && age < high).length,
  });
  return {
    whole: within(0, Number.POSITIVE_INFINITY),
    bands: bandStarts.slice(1).map((high, index) => within(bandStarts[index] ?? 0, high)),
  };
}

/** Failures of the first units at ages that both have, and those that the second units' rates predict for them. */
export function rawExpected(first: readonly RawUnit[], second: readonly RawUnit[], question: RawQuestion) {
  const [one, two] = [first, second].map((units) => summed(units, question));
  let [observed, expected] = [0, 0];
  one?.forEach(({ exposure, events }, band) => {
    const reference = two?.[band];
    if (reference === undefined || reference.exposure === 0 || exposure === 0) return;
    observed += events;
    expected += (reference.events / reference.exposure) * exposure;
  });
  return { observed, expected };
}

function summed(units: readonly RawUnit[], question: RawQuestion): Watched[] {
  return bandStarts.slice(1).map((_, band) => {
    const own = units.flatMap((unit) => rawRate(unit, question)?.bands[band] ?? []);
    return {
      exposure: own.reduce((sum, { exposure }) => sum + exposure, 0),
      events: own.reduce((sum, { events }) => sum + events, 0),
    };
  });
}
