// What is on record of the machines that carry a component, as forecasts need it: by month and by age in months.
import type { DayNumber } from "@/lib/calendar/day-number";
import type { ExposureCells } from "@/lib/failures/cells";
import { inFleet } from "@/lib/failures/groups";
import { daysPerMonth } from "@/lib/failures/rate-question";
import { type LifeQuestion, visitSpells } from "@/lib/failures/visit-spells";
import { AgeTally, type LivedAges } from "@/lib/statistics/life/lived-ages";

/** A component in the machines of a maker, or of all makers. */
export interface FleetQuestion {
  readonly component: string;
  readonly maker: string | undefined;
  /** First days of the months of the history, oldest first, and last of all that of the month that is forecast. */
  readonly monthStarts: readonly DayNumber[];
  /** Months before the forecast with which a back-test begins. */
  readonly testMonths: number;
}

export interface FleetRecord {
  /** Failures in each month of the history, of machines whose age is known. */
  readonly failures: readonly number[];
  /** Components that run at the start of the month of the forecast, by age in months; then of the month before it, and so on. */
  readonly running: readonly Float64Array[];
  readonly now: KnownFleet;
  /** What was known when the back-test begins. */
  readonly beforeTest: KnownFleet;
}

/** What is known at the end of a month. */
export interface KnownFleet {
  /** How long the component lived, ages in months. */
  readonly lives: LivedAges;
  /** Machines retired in the last three years, and months that machines were watched in them. */
  readonly left: { readonly machines: number; readonly months: number };
  /** Machines that came under watch in the last year, by their age then in months. */
  readonly came: Float64Array;
}

/** Longer ago tells less of how many come and go now. Own choice, no source. */
const [monthsOfLeaving, monthsOfComing] = [36, 12];

/** One pass over the counts for each month that is looked at; the cost does not depend on the number of machines. */
export function fleetRecord(cells: ExposureCells, question: FleetQuestion): FleetRecord {
  const { component, maker, monthStarts, testMonths } = question;
  const [now, ...earlier] = monthStarts.toReversed();
  if (now === undefined) throw new RangeError("monthStarts must hold the month of the forecast at least");
  const starts = [now, ...earlier.slice(0, testMonths)];
  const asOf = (until: DayNumber): LifeQuestion => ({
    component,
    where: { maker, component },
    from: undefined,
    until,
    level: 0.9,
  });
  return {
    failures: failuresByMonth(cells, asOf(now), monthStarts),
    running: starts.map((until) => runningAges(cells, asOf(until))),
    now: knownFleet(cells, asOf(now)),
    beforeTest: knownFleet(cells, asOf(starts.at(-1) ?? now)),
  };
}

function knownFleet(cells: ExposureCells, question: LifeQuestion): KnownFleet {
  return { lives: componentLives(cells, question), ...comingAndGoing(cells, question) };
}

/** Failures and time lived of a component, by its age in months. */
export function componentLives(cells: ExposureCells, question: LifeQuestion): LivedAges {
  const lives = new AgeTally(halfDaysPerMonth);
  visitSpells(cells, question, (entry, exit, event, count) => lives.add(entry, exit, event, count));
  return lives.counts();
}

/** Lives are handed over in half days. */
const halfDaysPerMonth = 2 * daysPerMonth;

/** Lives that are still going on, of machines that are still in service: those that were only cut off. */
export function runningAges(cells: ExposureCells, question: LifeQuestion): Float64Array {
  const stays = (retiredOn: DayNumber | undefined) => retiredOn === undefined || retiredOn >= question.until;
  const inService = {
    ...cells,
    windows: cells.windows.filter(({ retiredOn }) => stays(retiredOn)),
    jobs: cells.jobs.filter(({ place }) => stays(place?.retiredOn)),
  };
  const ages: number[] = [];
  visitSpells(inService, question, (_, exit, event, count) => {
    if (event) return;
    const age = Math.floor(exit / halfDaysPerMonth);
    ages[age] = (ages[age] ?? 0) + count;
  });
  return Float64Array.from(ages, (count) => Math.max(0, count ?? 0));
}

/** Failures in each month of machines whose age is known. */
export function failuresByMonth(
  cells: ExposureCells,
  question: LifeQuestion,
  monthStarts: readonly DayNumber[],
): readonly number[] {
  const asked = askedModels(cells, question);
  const failures = new Array<number>(monthStarts.length - 1).fill(0);
  for (const { modelId, component, countedAs, place, failedOn, jobs } of cells.jobs) {
    if (component !== question.component || countedAs !== "failure" || place === undefined || !asked.has(modelId))
      continue;
    const month = monthStarts.findLastIndex((start) => start <= failedOn);
    if (month >= 0 && month < failures.length) failures[month] = (failures[month] ?? 0) + jobs;
  }
  return failures;
}

function comingAndGoing(cells: ExposureCells, question: LifeQuestion): Pick<KnownFleet, "left" | "came"> {
  const { until } = question;
  const asked = askedModels(cells, question);
  const leavingSince = until - Math.round(monthsOfLeaving * daysPerMonth);
  const comingSince = until - Math.round(monthsOfComing * daysPerMonth);
  let [machines, days] = [0, 0];
  const came: number[] = [];
  for (const { modelId, inServiceOn, observedFrom, retiredOn, units } of cells.windows) {
    if (!asked.has(modelId) || observedFrom >= until) continue;
    days += units * Math.max(0, Math.min(retiredOn ?? until, until) - Math.max(observedFrom, leavingSince));
    if (retiredOn !== undefined && retiredOn >= leavingSince && retiredOn < until) machines += units;
    if (observedFrom < comingSince) continue;
    const age = Math.floor((observedFrom - inServiceOn) / daysPerMonth);
    came[age] = (came[age] ?? 0) + units;
  }
  return { left: { machines, months: days / daysPerMonth }, came: Float64Array.from(came, (count) => count ?? 0) };
}

function askedModels(cells: ExposureCells, { where }: LifeQuestion): ReadonlySet<number> {
  return new Set(cells.models.filter((model) => inFleet(cells, model, { where })).map(({ modelId }) => modelId));
}
