// Closed jobs, one a row; their part lines and readings come in files of their own.
import { z } from "zod";
import type { Day } from "@/lib/calendar/day";
import { causeKeys } from "@/lib/domain/cause";
import { type ClosedJob, jobStatuses, payerKinds } from "@/lib/domain/job";
import { type Currency, currencies, type Money } from "@/lib/domain/money";
import { type ProductType, productTypeKeys } from "@/lib/domain/product-type";
import { optional, required, withDefault } from "./cell";
import { dayCell, dayMonthOrYearCell } from "./cell-days";
import { amount, wholeNumber } from "./cell-numbers";
import { catalogueKey, identifier, note, oneOf, shortText } from "./cell-texts";
import type { IntakeSetting } from "./intake-setting";
import { neverCompleted } from "./never-completed";
import type { CellProblem, Parsed } from "./parsed";
import { type Cells, futureDays, outOfOrder, readRow, unknownWords } from "./row-problems";

export const jobRow = z.object({
  job_number: required(identifier, "The company's own number of the job; it names the job for good."),
  status: withDefault(oneOf(jobStatuses), "closed", "Only closed jobs are counted."),
  maker: required(shortText, "Maker, as on the rating plate."),
  model: optional(
    identifier,
    "Model number, as on the rating plate; its suffix may be missing. Where it is blank, the model is not stated.",
  ),
  product_type: optional(oneOf(productTypeKeys), "Kind of appliance; needed where the model is not on file yet."),
  serial: optional(
    identifier,
    "Serial number; where it is blank the job hangs on a unit without identity and carries no exposure.",
  ),
  requested_on: optional(dayCell, "Day the customer reported the trouble."),
  first_visit_on: optional(dayCell, "Day of the first visit."),
  diagnosed_on: optional(dayCell, "Day the cause was found."),
  parts_ordered_on: optional(dayCell, "Day the parts were ordered."),
  parts_received_on: optional(dayCell, "Day the parts came."),
  completed_on: required(
    dayCell,
    "Day the job was completed; filing windows run from here. Only one that came to nothing, by its status, may have none.",
  ),
  invoiced_on: optional(dayCell, "Day the job was invoiced."),
  complaint: optional(note, "Complaint, in the customer's words."),
  cause_note: optional(note, "Cause, as the technician wrote it."),
  correction: optional(note, "Correction, as the technician wrote it."),
  symptom: optional(catalogueKey, "Key of the symptom."),
  component: optional(catalogueKey, "Key of the component that was in trouble."),
  failure_mode: optional(catalogueKey, "Key of the way in which it failed."),
  cause: withDefault(
    oneOf(causeKeys),
    "not_determined",
    "Why: the component itself, an outside cause, or none that was found.",
  ),
  visits: withDefault(wholeNumber({ least: 0 }), 1, "Number of visits."),
  technician: optional(shortText, "Who did the job."),
  payer: withDefault(oneOf(payerKinds), "customer", "Who is meant to pay."),
  labour_minutes: optional(wholeNumber({ least: 0 }), "Working time in minutes."),
  labour: optional(amount, "Labour charge."),
  trip: optional(amount, "Trip charge."),
  trip_miles: optional(wholeNumber({ least: 0 }), "Miles driven for all visits, there and back."),
  currency: optional(oneOf(currencies), "Currency of the amounts; the company's own where blank."),
  authorization_number: optional(shortText, "The payer's number, where one was given beforehand."),
  authorized_on: optional(dayCell, "Day that number was given."),
  callback_of: optional(identifier, "Number of the earlier job that this one returns to."),
  made: optional(dayMonthOrYearCell, "Day of the unit's manufacture, or its month or year where only that is known."),
  sold_on: optional(dayCell, "Day the unit was sold to its first user."),
  delivered_on: optional(dayCell, "Day the unit was delivered to the service address."),
  installed_on: optional(dayCell, "Day the unit was installed."),
});

/** What a job's row says of its unit besides its plate; a register of units knows better where there is one. */
export interface UnitFacts {
  /** First and last day that manufacture can have happened. */
  readonly madeFrom: Day | undefined;
  readonly madeUntil: Day | undefined;
  readonly soldOn: Day | undefined;
  readonly deliveredOn: Day | undefined;
  readonly installedOn: Day | undefined;
}

/** A job and what it says about its unit. */
export interface JobRow {
  readonly job: Omit<ClosedJob, "completedOn"> & {
    /** Undefined where the job came to nothing before it was completed. */
    readonly completedOn: Day | undefined;
  };
  readonly currency: Currency;
  readonly maker: string;
  /** Undefined where the row does not state it. */
  readonly model: string | undefined;
  readonly productType: ProductType | undefined;
  readonly serial: string | undefined;
  readonly unitFacts: UnitFacts;
}

const pastDays = [
  "requested_on",
  "first_visit_on",
  "diagnosed_on",
  "parts_ordered_on",
  "parts_received_on",
  "completed_on",
  "invoiced_on",
  "authorized_on",
  "sold_on",
  "delivered_on",
  "installed_on",
];

/** One row of jobs.csv in; one job, or every problem of the row, out. */
export function parseJobRow(cells: Cells, setting: IntakeSetting): Parsed<JobRow> {
  const { components, symptoms, failureModes } = setting.catalogue;
  return readRow(neverCompleted(cells) === undefined ? jobRow : endedJobRow, cells, setting, {
    words: [
      ...unknownWords(cells, [
        { column: "component", words: components, noun: "component" },
        { column: "symptom", words: symptoms, noun: "symptom" },
        { column: "failure_mode", words: failureModes, noun: "failure mode" },
      ]),
      ...futureDays(cells, pastDays, setting),
    ],
    contradictions,
    value: jobRowOf,
  });
}

function contradictions(row: AnyJobRow, cells: Cells): readonly CellProblem[] {
  return [...outOfOrder(cells, daysInOrder), ...callsItselfBack(row)];
}

const daysInOrder = [
  ["requested_on", "first_visit_on"],
  ["requested_on", "completed_on"],
  ["first_visit_on", "completed_on"],
  ["made", "sold_on"],
  ["made", "delivered_on"],
  ["made", "installed_on"],
  ["made", "completed_on"],
] as const;

const endedJobRow = jobRow.extend({ completed_on: optional(dayCell, "None: the job came to nothing.") });
type AnyJobRow = z.output<typeof endedJobRow>;

function callsItselfBack(row: AnyJobRow): readonly CellProblem[] {
  if (row.callback_of !== row.job_number) return [];
  return [
    {
      column: "callback_of",
      value: row.job_number,
      problem: "names this job itself",
      fix: "Name the earlier job, or leave it blank.",
    },
  ];
}

function jobRowOf(row: AnyJobRow, setting: IntakeSetting): JobRow {
  const currency = row.currency ?? setting.currency;
  const job: JobRow["job"] = {
    jobNumber: row.job_number,
    status: row.status,
    requestedOn: row.requested_on,
    firstVisitOn: row.first_visit_on,
    diagnosedOn: row.diagnosed_on,
    partsOrderedOn: row.parts_ordered_on,
    partsReceivedOn: row.parts_received_on,
    completedOn: row.completed_on,
    invoicedOn: row.invoiced_on,
    complaint: row.complaint ?? "",
    causeNote: row.cause_note ?? "",
    correction: row.correction ?? "",
    symptom: row.symptom,
    component: row.component,
    failureMode: row.failure_mode,
    cause: row.cause,
    visits: row.visits,
    technician: row.technician,
    payer: row.payer,
    labourMinutes: row.labour_minutes,
    labour: moneyOf(row.labour, currency),
    trip: moneyOf(row.trip, currency),
    tripMiles: row.trip_miles,
    authorizationNumber: row.authorization_number,
    authorizedOn: row.authorized_on,
    callbackOf: row.callback_of,
  };
  const { maker, model, product_type: productType, serial } = row;
  return { job, currency, maker, model, productType, serial, unitFacts: unitFactsOf(row) };
}

function moneyOf(cents: number | undefined, currency: Currency): Money | undefined {
  return cents === undefined ? undefined : { cents, currency };
}

function unitFactsOf(row: AnyJobRow): UnitFacts {
  return {
    madeFrom: row.made?.earliest,
    madeUntil: row.made?.latest,
    soldOn: row.sold_on,
    deliveredOn: row.delivered_on,
    installedOn: row.installed_on,
  };
}
