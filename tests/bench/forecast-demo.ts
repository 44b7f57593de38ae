// Forecasts from lives on invented companies whose truth is known: do the bands hold what they claim?

import { day } from "@/lib/calendar/day";
import { dayFromNumber, dayNumber } from "@/lib/calendar/day-number";
import { FleetFailures } from "@/lib/forecast/fleet/fleet-failures";
import { fewestFailuresForFleet } from "@/lib/forecast/fleet/part-fleet";
import { monthOfPaths } from "@/lib/forecast/paths";
import { testedSeason } from "@/lib/forecast/tested-season";
import { countBand, shareInsideCentral } from "@/lib/statistics/demand/count-band";
import { AgeTally } from "@/lib/statistics/life/lived-ages";
import { livesOf } from "@/synthetic-data/hazards";
import { type RegisterUnit, registerUnit } from "@/synthetic-data/register-unit";
import { type Scenario, scenarioOf } from "@/synthetic-data/scenario";
import { unitEvents } from "@/synthetic-data/unit-events";

export interface BandsHeld {
  readonly months: number;
  readonly inside60: number;
  readonly inside90: number;
  readonly central90: number;
}

const monthDays = 30.4375;
const horizon = 12;
const futures = 400;

/**
 * Each company is cut off a year before its records end; the failures of each component of each product type in the
 * year after are forecast from the register and the failures before, month by month.
 */
export function demoBands(seeds: readonly number[], size: number): BandsHeld {
  const sums = { months: 0, inside60: 0, inside90: 0, central90: 0 };
  for (const seed of seeds) {
    const scenario = scenarioOf({ seed, size, until: "2026-06-30" });
    const fleets = fleetsOf(scenario);
    const wear = wearOfTypes(fleets.values());
    let number = 1000 * seed;
    const firstMonth = calendarMonth(cut);
    for (const fleet of fleets.values())
      addFleet(fleet, { seed: number++, firstMonth, wear: wear.get(fleet.type) }, sums);
  }
  const { months } = sums;
  return {
    months,
    inside60: sums.inside60 / months,
    inside90: sums.inside90 / months,
    central90: sums.central90 / months,
  };
}

export function benchForecastDemo(companies: number): void {
  const before = process.cpuUsage();
  const held = demoBands(
    Array.from({ length: companies }, (_, i) => i + 1),
    0.05,
  );
  const { user } = process.cpuUsage(before);
  const percent = (share: number) => `${(100 * share).toFixed(1)} %`;
  console.log(
    `${companies} companies, ${held.months} months of components, ${(user / 1e6).toFixed(0)} s of processor time`,
  );
  console.log(`inside the 60 % band ${percent(held.inside60)}, the 90 % band ${percent(held.inside90)}`);
  console.log(`inside the central 90 %, counts spread over their steps: ${percent(held.central90)}`);
}

interface Fleet {
  readonly type: string;
  /** Failures, and months lived, in each calendar month before the cut. */
  readonly byMonth: { readonly failures: number[]; readonly lived: number[] };
  readonly lives: AgeTally;
  /** Components that run at the cut, by age in months. */
  readonly running: number[];
  readonly actual: number[];
  readonly left: { machines: number; months: number };
}

function fleetsOf(scenario: Scenario): ReadonlyMap<string, Fleet> {
  const fleets = new Map<string, Fleet>();
  for (let index = 0; index < scenario.units; index++) {
    const unit = registerUnit(scenario, index);
    if (!unit.placed || unit.observedFrom >= cut) continue;
    const failures = unitEvents(scenario, unit).filter((event) => event.kind === "failure");
    for (const component of componentsOf(unit)) {
      const key = `${unit.model.productType} ${component}`;
      const fleet = fleets.get(key) ?? {
        type: unit.model.productType,
        byMonth: { failures: new Array<number>(12).fill(0), lived: new Array<number>(12).fill(0) },
        lives: new AgeTally(),
        running: [],
        actual: new Array<number>(horizon).fill(0),
        left: { machines: 0, months: 0 },
      };
      fleets.set(key, fleet);
      addUnit(
        fleet,
        unit,
        failures.filter((event) => event.component === component).map(({ on }) => on),
      );
    }
  }
  return fleets;
}

/** The first day of the month a year before the records end. */
const cut = dayNumber(day("2025-07-01"));

/** The season of each type of appliance, where all its failures show one. */
function wearOfTypes(fleets: Iterable<Fleet>): ReadonlyMap<string, readonly number[]> {
  const types = new Map<string, Fleet["byMonth"]>();
  for (const { type, byMonth } of fleets) {
    const sum = types.get(type) ?? { failures: new Array<number>(12).fill(0), lived: new Array<number>(12).fill(0) };
    types.set(type, sum);
    for (const name of ["failures", "lived"] as const) {
      for (const [month, value] of byMonth[name].entries()) sum[name][month] = (sum[name][month] ?? 0) + value;
    }
  }
  const wear = new Map<string, readonly number[]>();
  for (const [type, { failures, lived }] of types) {
    const found = testedSeason({ events: failures, exposure: lived, dispersion: 1, level: 0.01 });
    if (found.kind === "season") wear.set(type, found.factors);
  }
  return wear;
}

function calendarMonth(day: number): number {
  return Number(dayFromNumber(day).slice(5, 7)) - 1;
}

function componentsOf(unit: RegisterUnit): readonly string[] {
  return livesOf(unit.model).map(({ component }) => component);
}

function addUnit(fleet: Fleet, unit: RegisterUnit, failedOn: readonly number[]): void {
  const months = (from: number, to: number) => Math.max(0, to - from) / monthDays;
  const seenTo = Math.min(unit.observedTo, cut);
  let since = unit.inServiceOn;
  let entry = months(since, unit.observedFrom);
  for (const on of failedOn) {
    if (on >= seenTo) continue;
    addTo(fleet.byMonth.failures, calendarMonth(on), 1);
    fleet.lives.add(entry, Math.max(months(since, on), entry), true, 1);
    since = on;
    entry = 0;
  }
  fleet.lives.add(entry, Math.max(months(since, seenTo), entry), false, 1);
  for (let day = unit.observedFrom + 15; day < seenTo; day += monthDays)
    addTo(fleet.byMonth.lived, calendarMonth(Math.floor(day)), 1);
  fleet.left.months += months(unit.observedFrom, seenTo);
  if (unit.observedTo < cut) fleet.left.machines += 1;
  if (unit.observedTo < cut) return;
  addTo(fleet.running, Math.floor(months(since, cut)), 1);
  for (const on of failedOn) {
    const month = (calendarMonth(on) - calendarMonth(cut) + 12) % 12;
    if (on >= cut) fleet.actual[month] = (fleet.actual[month] ?? 0) + 1;
  }
}

/** Machines that come after the cut are in neither: the company's register would say how many do. */
function addFleet(
  { lives, running, actual, left }: Fleet,
  {
    seed,
    firstMonth,
    wear,
  }: { readonly seed: number; readonly firstMonth: number; readonly wear: readonly number[] | undefined },
  sums: { months: number; inside60: number; inside90: number; central90: number },
): void {
  const counts = lives.counts();
  if (counts.failed.reduce((sum, count) => sum + count, 0) < fewestFailuresForFleet) return;
  const known = { lives: counts, left, came: new Float64Array(0) };
  const failures = new FleetFailures({
    record: {
      failures: [],
      running: [Float64Array.from(running, (count) => count ?? 0)],
      now: known,
      beforeTest: known,
    },
    wear: { now: wear, beforeTest: wear },
    firstMonth,
    signals: [],
    horizon,
    futures,
    seed,
  });
  const paths = failures.repairs();
  for (const [month, count] of actual.entries()) {
    const distribution = monthOfPaths(paths, month);
    const [narrow, wide] = [countBand(distribution, 0.6), countBand(distribution, 0.9)];
    sums.months += 1;
    if (count >= narrow.low && count <= narrow.high) sums.inside60 += 1;
    if (count >= wide.low && count <= wide.high) sums.inside90 += 1;
    sums.central90 += shareInsideCentral(distribution, 0.9, count);
  }
}

function addTo(sums: number[], place: number, amount: number): void {
  sums[place] = (sums[place] ?? 0) + amount;
}
