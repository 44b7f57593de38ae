// Closed jobs and everything under them. Every key begins with unit_id, so that the tables can be spread by unit.
import { sql } from "drizzle-orm";
import {
  boolean,
  check,
  foreignKey,
  index,
  integer,
  jsonb,
  pgTable,
  primaryKey,
  text,
  unique,
  varchar,
} from "drizzle-orm/pg-core";
import type { Day } from "@/lib/calendar/day";
import type { Cause, CountedAs } from "@/lib/domain/cause";
import type { JobStatus, PartRole, PayerKind, PhotoSubject } from "@/lib/domain/job";
import type { Currency } from "@/lib/domain/money";
import type { OwnCheck } from "@/lib/domain/own-check";
import type { MeterMode, PowerState, ReadingOutcome } from "@/lib/domain/reading";
import { components, symptoms } from "./catalogue";
import { batchColumn, bytesColumn, centsColumn, dayColumn, doubleColumn, instantColumn, keyColumn } from "./columns";
import { units } from "./register";

export const jobs = pgTable(
  "jobs",
  {
    unitId: keyColumn("unit_id")
      .notNull()
      .references(() => units.unitId),
    /** Made from the job number. */
    jobId: keyColumn("job_id").notNull(),
    jobNumber: text("job_number").notNull(),
    status: text("status").$type<JobStatus>().notNull(),
    requestedOn: dayColumn("requested_on"),
    firstVisitOn: dayColumn("first_visit_on"),
    diagnosedOn: dayColumn("diagnosed_on"),
    partsOrderedOn: dayColumn("parts_ordered_on"),
    partsReceivedOn: dayColumn("parts_received_on"),
    completedOn: dayColumn("completed_on").notNull(),
    invoicedOn: dayColumn("invoiced_on"),
    complaint: text("complaint").notNull(),
    causeNote: text("cause_note").notNull(),
    correction: text("correction").notNull(),
    symptom: varchar("symptom", { length: 60 }).references(() => symptoms.key),
    component: varchar("component", { length: 60 }).references(() => components.key),
    failureMode: text("failure_mode"),
    cause: varchar("cause", { length: 60 }).$type<Cause>().notNull(),
    visits: integer("visits").notNull(),
    technician: text("technician"),
    payer: text("payer").$type<PayerKind>().notNull(),
    labourMinutes: integer("labour_minutes"),
    labourCents: centsColumn("labour_cents"),
    tripCents: centsColumn("trip_cents"),
    /** For all visits, there and back. */
    tripMiles: integer("trip_miles"),
    currency: varchar("currency", { length: 3 }).$type<Currency>().notNull(),
    authorizationNumber: text("authorization_number"),
    authorizedOn: dayColumn("authorized_on"),
    callbackOf: text("callback_of"),
    /** Day of failure: reported, else first visit, else completed. */
    failedOn: dayColumn("failed_on")
      .generatedAlwaysAs(sql`coalesce(requested_on, first_visit_on, completed_on)`)
      .$type<Day>(),
    countedAs: text("counted_as")
      .generatedAlwaysAs(
        sql`case when status <> 'closed' then 'nothing' when cause = 'component' and component is not null then 'failure' else 'call' end`,
      )
      .$type<CountedAs>(),
    batchId: batchColumn(),
  },
  (table) => [
    primaryKey({ columns: [table.unitId, table.jobId] }),
    unique("jobs_one_number_a_unit").on(table.jobNumber, table.unitId), // in this order it finds jobs by number as well
    index("jobs_by_completed").on(table.completedOn),
    index("jobs_by_component").on(table.component, table.completedOn),
    index("jobs_by_batch").on(table.batchId),
    check("jobs_known_status", sql`${table.status} in ('closed', 'void', 'cancelled', 'estimate', 'duplicate')`),
    check("jobs_visit_after_request", sql`${table.requestedOn} <= ${table.firstVisitOn}`),
    check("jobs_complete_after_request", sql`${table.requestedOn} <= ${table.completedOn}`),
    check("jobs_complete_after_visit", sql`${table.firstVisitOn} <= ${table.completedOn}`),
    check("jobs_visits_not_negative", sql`${table.visits} >= 0`),
    check(
      "jobs_labour_not_negative",
      sql`${table.labourMinutes} >= 0 and ${table.labourCents} >= 0 and ${table.tripCents} >= 0`,
    ),
    check("jobs_miles_not_negative", sql`${table.tripMiles} >= 0`),
    check("jobs_callback_of_another", sql`${table.callbackOf} <> ${table.jobNumber}`),
  ],
);

export const partLines = pgTable(
  "part_lines",
  {
    unitId: keyColumn("unit_id").notNull(),
    jobId: keyColumn("job_id").notNull(),
    line: integer("line").notNull(),
    partNumber: text("part_number").notNull(),
    description: text("description").notNull(),
    component: varchar("component", { length: 60 }).references(() => components.key),
    role: text("role").$type<PartRole>().notNull(),
    quantity: integer("quantity").notNull(),
    unitCostCents: centsColumn("unit_cost_cents").notNull(),
    currency: varchar("currency", { length: 3 }).$type<Currency>().notNull(),
    distributor: text("distributor"),
    invoiceNumber: text("invoice_number"),
    invoiceLine: text("invoice_line"),
    invoicedOn: dayColumn("invoiced_on"),
    batchId: batchColumn(),
  },
  (table) => [
    primaryKey({ columns: [table.unitId, table.jobId, table.line] }),
    foreignKey({
      columns: [table.unitId, table.jobId],
      foreignColumns: [jobs.unitId, jobs.jobId],
      name: "part_lines_of_a_job",
    }),
    index("part_lines_by_number").on(table.partNumber),
    index("part_lines_by_batch").on(table.batchId),
    check("part_lines_some_quantity", sql`${table.quantity} > 0`),
    check("part_lines_cost_not_negative", sql`${table.unitCostCents} >= 0`),
    check("part_lines_count_from_one", sql`${table.line} >= 1`),
  ],
);

export const readings = pgTable(
  "readings",
  {
    unitId: keyColumn("unit_id").notNull(),
    jobId: keyColumn("job_id").notNull(),
    number: integer("number").notNull(),
    check: varchar("check_key", { length: 60 }).notNull(),
    /** The check itself where the company wrote it, as it stood when this was read. */
    own: jsonb("own_check").$type<OwnCheck>(),
    pointA: text("point_a"),
    pointB: text("point_b"),
    mode: text("mode").$type<MeterMode>().notNull(),
    outcome: text("outcome").$type<ReadingOutcome["kind"]>().notNull(),
    value: doubleColumn("value"),
    unit: text("unit"),
    /** The finding's word, or the fault code. */
    word: text("word"),
    power: text("power").$type<PowerState>().notNull(),
    isolated: boolean("isolated"),
    loadConnected: boolean("load_connected"),
    commanded: boolean("commanded"),
    temperatureC: doubleColumn("temperature_c"),
    sheetLow: doubleColumn("sheet_low"),
    sheetHigh: doubleColumn("sheet_high"),
    sheetReference: text("sheet_reference"),
    note: text("note"),
    technician: text("technician"),
    takenAt: instantColumn("taken_at"),
    batchId: batchColumn(),
  },
  (table) => [
    primaryKey({ columns: [table.unitId, table.jobId, table.number] }),
    foreignKey({
      columns: [table.unitId, table.jobId],
      foreignColumns: [jobs.unitId, jobs.jobId],
      name: "readings_of_a_job",
    }),
    index("readings_by_batch").on(table.batchId),
    index("readings_codes").on(table.unitId, table.jobId, table.word).where(sql`outcome = 'code'`),
    check(
      "readings_known_outcome",
      sql`${table.outcome} in ('number', 'open', 'short', 'no_reading', 'finding', 'code')`,
    ),
    check("readings_number_has_value", sql`(${table.outcome} = 'number') = (${table.value} is not null)`),
    check("readings_number_has_unit", sql`${table.outcome} <> 'number' or ${table.unit} is not null`),
    check("readings_word_where_due", sql`(${table.outcome} in ('finding', 'code')) = (${table.word} is not null)`),
    check("readings_sheet_in_order", sql`${table.sheetLow} <= ${table.sheetHigh}`),
    check("readings_known_power", sql`${table.power} in ('off', 'powered_panels_closed', 'live')`),
    check(
      "readings_finite",
      sql`${table.value} <> 'NaN'::double precision and abs(${table.value}) <> 'Infinity'::double precision`,
    ),
  ],
);

export const attachments = pgTable(
  "attachments",
  {
    unitId: keyColumn("unit_id").notNull(),
    jobId: keyColumn("job_id").notNull(),
    /** First 63 bits of the hash of the received bytes and the job: the same photo twice is one photo. */
    attachmentId: keyColumn("attachment_id").notNull(),
    subject: text("subject").$type<PhotoSubject>().notNull(),
    caption: text("caption").notNull(),
    mediaType: text("media_type").$type<"image/jpeg" | "application/pdf">().notNull(),
    width: integer("width"),
    height: integer("height"),
    takenAt: instantColumn("taken_at"),
    receivedSha256: varchar("received_sha256", { length: 64 }).notNull(),
    storedSha256: varchar("stored_sha256", { length: 64 }).notNull(),
    storedBytes: integer("stored_bytes").notNull(),
    /** Kept in the row, so that one transaction and one backup hold claim and proof together. */
    content: bytesColumn("content").notNull(),
    batchId: batchColumn(),
  },
  (table) => [
    primaryKey({ columns: [table.unitId, table.jobId, table.attachmentId] }),
    foreignKey({
      columns: [table.unitId, table.jobId],
      foreignColumns: [jobs.unitId, jobs.jobId],
      name: "attachments_of_a_job",
    }),
    index("attachments_by_batch").on(table.batchId),
    check("attachments_sized", sql`${table.storedBytes} = octet_length(${table.content}) and ${table.storedBytes} > 0`),
    check(
      "attachments_hashed",
      sql`${table.storedSha256} ~ '^[0-9a-f]{64}$' and ${table.receivedSha256} ~ '^[0-9a-f]{64}$'`,
    ),
  ],
);
