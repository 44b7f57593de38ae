import { dayText } from "./day-text";
import { drawWhole, happens } from "./draws";
import type { Cells, JobColumn } from "./file-columns";
import type { JobDetail } from "./job-detail";
import { type DirtKind, drawDirt, mistyped } from "./job-dirt";
import { makers, modelNumber } from "./models";
import { randomOf } from "./random";
import type { RegisterUnit } from "./register-unit";
import type { Scenario } from "./scenario";
import type { JobPlan } from "./unit-jobs";

export interface WrittenJob {
  readonly cells: Cells<JobColumn>;
  readonly dirt: ReadonlySet<DirtKind>;
}

export interface JobNumbers {
  readonly own: string;
  /** Number of the job that this one returns to, where the paper says so. */
  readonly earlier: string | undefined;
}

/** One row of jobs.csv. */
export function jobRow(
  scenario: Scenario,
  unit: RegisterUnit,
  job: JobPlan,
  detail: JobDetail,
  numbers: JobNumbers,
): WrittenJob {
  const { random } = detail;
  const dirt = drawDirt(random);
  // A job without its request date is placed by a later day, which must not fall outside the unit's time with us.
  if (job.completedOn >= unit.observedTo) dirt.delete("request_missing");
  const closed = job.status === "closed" || job.status === "duplicate";
  const cells: Cells<JobColumn> = {
    job_number: numbers.own,
    status: job.status,
    ...plate(unit, detail, dirt),
    ...days(scenario, job, detail, dirt, closed),
    complaint: detail.words.complaint,
    symptom: detail.symptom,
    component: dirt.has("component_missing") ? "" : detail.component,
    cause: closed ? detail.cause : "not_determined",
    visits: job.visits,
    technician: detail.technician,
    payer: detail.payer,
    callback_of: numbers.earlier,
    ...(closed ? closing(random, job, detail) : {}),
    trip_miles: closed ? tripMiles(scenario, unit, job) : "",
  };
  if (dirt.has("cause_unknown")) cells.cause = "not_determined";
  return { cells, dirt };
}

function plate(unit: RegisterUnit, { random }: JobDetail, dirt: ReadonlySet<DirtKind>): Cells<JobColumn> {
  const { model } = unit;
  return {
    maker: makers[model.maker].name,
    model: dirt.has("suffix_missing") ? model.root : modelNumber(model),
    product_type: model.productType,
    serial: dirt.has("serial_blank") ? "" : dirt.has("serial_wrong") ? mistyped(random, unit.serial) : unit.serial,
  };
}

function days(
  scenario: Scenario,
  job: JobPlan,
  { random, usesPart }: JobDetail,
  dirt: ReadonlySet<DirtKind>,
  closed: boolean,
): Cells<JobColumn> {
  const ordered = closed && usesPart && job.completedOn > job.firstVisitOn;
  const received = ordered ? drawWhole(random, job.firstVisitOn + 1, job.completedOn) : undefined;
  const invoiced = job.completedOn + (happens(random, 0.6) ? 0 : drawWhole(random, 1, 5));
  return {
    requested_on: dirt.has("request_missing") ? "" : dayText(job.requestedOn),
    first_visit_on: dirt.has("visit_missing") || !closed ? "" : dayText(job.firstVisitOn),
    diagnosed_on: closed ? dayText(job.firstVisitOn) : "",
    parts_ordered_on: ordered ? dayText(job.firstVisitOn) : "",
    parts_received_on: received === undefined ? "" : dayText(received),
    completed_on: dayText(job.completedOn),
    invoiced_on: !closed || dirt.has("invoice_missing") || invoiced > scenario.untilNumber ? "" : dayText(invoiced),
  };
}

function closing(random: JobDetail["random"], job: JobPlan, detail: JobDetail): Cells<JobColumn> {
  const authorized = (detail.payer === "maker" && detail.minutes > 150) || detail.payer === "goodwill";
  return {
    cause_note: detail.words.causeNote,
    correction: detail.words.correction,
    failure_mode: detail.failureMode,
    labour_minutes: detail.minutes,
    labour: money(detail.payer === "own_guarantee" ? 0 : 4500 + 130 * detail.minutes),
    trip: money(detail.payer === "own_guarantee" ? 0 : 3900),
    authorization_number: authorized ? `A-${drawWhole(random, 100000, 999999)}` : "",
    authorized_on: authorized ? dayText(job.firstVisitOn) : "",
  };
}

/** There and back on each visit, from the unit's own address; one job in ten has nobody's note of it. */
function tripMiles({ seed }: Scenario, { index }: RegisterUnit, { visits, requestedOn }: JobPlan): number | "" {
  const oneWay = drawWhole(randomOf(seed, index, 9), 1, 28);
  return happens(randomOf(seed, index, 10, requestedOn), 0.1) ? "" : 2 * oneWay * visits;
}

/** Cents as intake reads them: a decimal with a point. */
export function money(cents: number): string {
  return (cents / 100).toFixed(2);
}
