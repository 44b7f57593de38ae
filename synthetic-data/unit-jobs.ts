import type { DayNumber } from "@/lib/calendar/day-number";
import type { JobStatus } from "@/lib/domain/job";
import { drawDelay } from "./delays";
import { drawWhole, happens } from "./draws";
import type { Random } from "./random";
import { randomOf } from "./random";
import type { RegisterUnit } from "./register-unit";
import type { Scenario } from "./scenario";
import { type UnitEvent, unitEvents } from "./unit-events";

/** One row of jobs.csv before its words are written. */
export interface JobPlan {
  readonly status: JobStatus;
  readonly event: UnitEvent;
  /** Position of the row whose finding it tells: its own, or that of the job it copies. */
  readonly tells: number;
  /** A return for the trouble of an earlier job: its position in the unit's list, and whether the paper says so. */
  readonly returnsTo: { readonly position: number; readonly linked: boolean } | undefined;
  readonly requestedOn: DayNumber;
  readonly firstVisitOn: DayNumber;
  readonly completedOn: DayNumber;
  readonly visits: number;
}

/** Chances that a job brings a further row. Handbook figures of the trade: voids 2-4 %, duplicates 1-2 %, callbacks 3-8 %. */
const furtherRows = { callback: 0.05, void: 0.03, estimate: 0.015, cancelled: 0.01, duplicate: 0.015 } as const;

/** Share of callbacks that were opened as new jobs without a word of the old one. */
const callbackUnlinked = 0.5;

/** The unit's rows that are closed by the end of the records, in order of its events. Only the first row of an event counts as a failure. */
export function unitJobs(scenario: Scenario, unit: RegisterUnit): readonly JobPlan[] {
  const random = randomOf(scenario.seed, unit.index, 3);
  const plans: JobPlan[] = [];
  for (const event of unitEvents(scenario, unit)) {
    const job = plan(random, event, plans.length, event.on);
    if (job.completedOn > scenario.untilNumber) continue;
    const further = furtherRowsOf(random, job, plans.length);
    plans.push(job, ...further.filter(({ completedOn }) => completedOn <= scenario.untilNumber));
  }
  return plans;
}

function furtherRowsOf(random: Random, job: JobPlan, position: number): readonly JobPlan[] {
  const rows: JobPlan[] = [];
  if (happens(random, furtherRows.callback)) {
    const back = plan(random, job.event, position + 1, job.completedOn + drawWhole(random, 2, 28));
    rows.push({ ...back, returnsTo: { position, linked: !happens(random, callbackUnlinked) } });
  }
  if (happens(random, furtherRows.void))
    rows.push({ ...job, status: "void", completedOn: job.firstVisitOn, visits: 0 });
  if (happens(random, furtherRows.estimate))
    rows.push({ ...job, status: "estimate", completedOn: job.firstVisitOn, visits: 1 });
  if (happens(random, furtherRows.cancelled))
    rows.push({ ...job, status: "cancelled", completedOn: job.firstVisitOn, visits: 0 });
  if (happens(random, furtherRows.duplicate)) rows.push({ ...job, status: "duplicate" });
  return rows;
}

function plan(random: Random, event: UnitEvent, tells: number, requestedOn: DayNumber): JobPlan {
  const delay = drawDelay(random);
  const firstVisitOn = requestedOn + delay.untilVisit;
  const visits = delay.forParts === 0 ? 1 : happens(random, 0.12) ? 3 : 2;
  return {
    status: "closed",
    event,
    tells,
    returnsTo: undefined,
    requestedOn,
    firstVisitOn,
    completedOn: firstVisitOn + delay.forParts,
    visits,
  };
}
