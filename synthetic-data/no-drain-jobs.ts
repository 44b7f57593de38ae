// Ten front-load washers that will not drain, each a job of the demo with the same number whatever seed and size. What was
// found stands in no-drain-cases.ts; here are the unit, the dates and why the dates were chosen.
import { addDays, addMonths, type Day } from "@/lib/calendar/day";
import { dayNumber } from "@/lib/calendar/day-number";
import { modelNumber, modelOf } from "./models";
import { type NoDrainCase, noDrainCases } from "./no-drain-cases";
import { weekDigits } from "./production-week";

export interface NoDrainJob {
  readonly jobNumber: string;
  readonly found: NoDrainCase;
  readonly serial: string;
  readonly soldOn: Day;
  readonly installedOn: Day;
  readonly requestedOn: Day;
  readonly visitedOn: Day;
  readonly completedOn: Day;
  /** What the dates show. */
  readonly why: string;
}

/** All are of this model, whose sheet gives the winding 12-18 ohm as the readings quote it. */
export const noDrainModel = modelOf("BHF27");

/** J-10001 to J-10010, in the order of noDrainCases. */
export function noDrainJobNumber(index: number): string {
  return `J-${10_001 + index}`;
}

/** @param until  the demo's today; every date hangs on it */
export function noDrainJobs(until: Day): readonly NoDrainJob[] {
  return noDrainCases.map((found, index) => {
    const dates = datesOf[found.name];
    if (dates === undefined) throw new RangeError(`noDrainCases: no dates for ${found.name}`);
    const completedOn = addDays(until, -dates.completedAgo);
    const requestedOn = addDays(completedOn, -dates.daysToComplete);
    const soldOn = addDays(addMonths(requestedOn, -dates.soldMonthsBefore), dates.soldDaysLater);
    const madeOn = addDays(soldOn, -60);
    return {
      jobNumber: noDrainJobNumber(index),
      found,
      serial: `B${weekDigits(dayNumber(madeOn))}${String(9_900_001 + index)}`,
      soldOn,
      installedOn: addDays(soldOn, 3),
      requestedOn,
      visitedOn: addDays(requestedOn, Math.min(2, dates.daysToComplete)),
      completedOn,
      why: dates.why,
    };
  });
}

export const noDrainModelNumber = modelNumber(noDrainModel);

interface CaseDates {
  readonly completedAgo: number;
  readonly daysToComplete: number;
  /** Sold so many months before the request, and so many days later than that. */
  readonly soldMonthsBefore: number;
  readonly soldDaysLater: number;
  readonly why: string;
}

/** The maker's filing window is 30 days from completion, the day of completion not counted; whole unit 1 year from purchase. */
const datesOf: Readonly<Record<string, CaseDates>> = {
  "Kinked hose": dates(9, 2, 1, 0, "inside the first year; an installation is not covered at any age"),
  Suds: dates(14, 2, 4, 0, "inside the first year; detergent is not covered"),
  "Object in the trap": dates(11, 2, 7, 0, "inside the first year; an object is not covered"),
  "Broken impeller": dates(
    6,
    2,
    12,
    0,
    "reported on the last covered day of the first year: parts and labour, boundary day",
  ),
  "Open winding": dates(10, 3, 8, 0, "inside the first year: parts and labour"),
  "Winding in range but seized": dates(
    8,
    2,
    12,
    -1,
    "reported one day after the first year: parts of the five-year class, no labour, boundary day",
  ),
  "Hose blocked past the pump": dates(20, 2, 5, 0, "inside the first year; the house drain is not covered"),
  "No output from the board, load good": dates(
    12,
    4,
    20,
    0,
    "in the second year: parts of the two-year electronics class, labour expired",
  ),
  "Harness open between board and pump": dates(30, 3, 10, 0, "inside the first year; today is the last day to file"),
  "Nothing found": dates(16, 1, 2, 0, "inside the first year; nothing to claim"),
};

function dates(
  completedAgo: number,
  daysToComplete: number,
  soldMonthsBefore: number,
  soldDaysLater: number,
  why: string,
): CaseDates {
  return { completedAgo, daysToComplete, soldMonthsBefore, soldDaysLater, why };
}
