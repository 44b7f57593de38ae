// The check sheet: jobs that are not closed yet, what technicians answered on their phones, and what the desk asks them.
import { sql } from "drizzle-orm";
import {
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
import type { PayerKind, PhotoSubject } from "@/lib/domain/job";
import { symptoms } from "./catalogue";
import { bytesColumn, dayColumn, instantColumn, keyColumn } from "./columns";
import { jobs } from "./jobs";
import { units } from "./register";

/** A job that somebody opened here and nobody has closed yet. Closing it makes the closed job; the row stays. */
export const openJobs = pgTable(
  "open_jobs",
  {
    unitId: keyColumn("unit_id")
      .notNull()
      .references(() => units.unitId),
    /** Made from the job number, as that of the closed job will be. */
    jobId: keyColumn("job_id").notNull(),
    jobNumber: text("job_number").notNull(),
    requestedOn: dayColumn("requested_on").notNull(),
    complaint: text("complaint").notNull(),
    symptom: varchar("symptom", { length: 60 })
      .notNull()
      .references(() => symptoms.key),
    technician: text("technician"),
    payer: text("payer").$type<PayerKind>().notNull(),
    callbackOf: text("callback_of"),
    openedAt: instantColumn("opened_at").notNull(),
    closedAt: instantColumn("closed_at"),
  },
  (table) => [
    primaryKey({ columns: [table.unitId, table.jobId] }),
    unique("open_jobs_one_number_a_unit").on(table.unitId, table.jobNumber),
    index("open_jobs_by_number").on(table.jobNumber),
    index("open_jobs_still_open").on(table.technician, table.requestedOn).where(sql`closed_at is null`),
    check("open_jobs_callback_of_another", sql`${table.callbackOf} <> ${table.jobNumber}`),
  ],
);

/** A sheet as the company edited it; the sheet that comes with the program is version 1 and is not stored. */
export const sheetVersions = pgTable(
  "sheet_versions",
  {
    /** Product type and component, such as front_load_washer/drain_pump. */
    sheetKey: varchar("sheet_key", { length: 130 }).notNull(),
    version: integer("version").notNull(),
    document: jsonb("document").notNull(),
    publishedAt: instantColumn("published_at").notNull(),
    by: text("by").notNull(),
    reason: text("reason").notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.sheetKey, table.version] }),
    check("sheet_versions_after_shipped", sql`${table.version} >= 2`),
    check("sheet_versions_have_reason", sql`btrim(${table.reason}) <> ''`),
  ],
);

/** Which versions of which sheets a job was worked by, as they stood when it was begun. */
export const sheetRuns = pgTable(
  "sheet_runs",
  {
    unitId: keyColumn("unit_id").notNull(),
    jobId: keyColumn("job_id").notNull(),
    /** Sheet key to version. */
    versions: jsonb("versions").$type<Readonly<Record<string, number>>>().notNull(),
    /** The sheets themselves, so that the path can be followed when they have long changed. */
    sheets: jsonb("sheets").notNull(),
    /** The company's own counts that the order of checks was proposed from. */
    basis: jsonb("basis").notNull(),
    startedAt: instantColumn("started_at").notNull(),
    closedAt: instantColumn("closed_at"),
  },
  (table) => [
    primaryKey({ columns: [table.unitId, table.jobId] }),
    foreignKey({ columns: [table.unitId], foreignColumns: [units.unitId], name: "sheet_runs_of_a_unit" }),
  ],
);

/** What a phone sent, as it sent it: readings, steps passed over, cautions confirmed. Rows are only added. */
export const sheetAnswers = pgTable(
  "sheet_answers",
  {
    unitId: keyColumn("unit_id").notNull(),
    jobId: keyColumn("job_id").notNull(),
    /** Made on the phone before anything is sent, so that the same answer sent again is the same answer. */
    answerId: varchar("answer_id", { length: 36 }).notNull(),
    /** Counted on the phone: the order in which answers were given, whatever any clock says. */
    sequence: integer("sequence").notNull(),
    body: jsonb("body").notNull(),
    bodySha256: varchar("body_sha256", { length: 64 }).notNull(),
    receivedAt: instantColumn("received_at").notNull(),
    /** Number of the reading that it became. */
    readingNumber: integer("reading_number"),
  },
  (table) => [
    primaryKey({ columns: [table.unitId, table.jobId, table.answerId] }),
    foreignKey({ columns: [table.unitId], foreignColumns: [units.unitId], name: "sheet_answers_of_a_unit" }),
    check("sheet_answers_count_from_one", sql`${table.sequence} >= 1`),
    check("sheet_answers_hashed", sql`${table.bodySha256} ~ '^[0-9a-f]{64}$'`),
  ],
);

/** Photos of a job that is not closed yet; closing moves them to its attachments. */
export const sheetPhotos = pgTable(
  "sheet_photos",
  {
    unitId: keyColumn("unit_id").notNull(),
    jobId: keyColumn("job_id").notNull(),
    /** Made on the phone. */
    photoId: varchar("photo_id", { length: 36 }).notNull(),
    attachmentId: keyColumn("attachment_id").notNull(),
    check: varchar("check_key", { length: 60 }),
    subject: text("subject").$type<PhotoSubject>().notNull(),
    caption: text("caption").notNull(),
    width: integer("width").notNull(),
    height: integer("height").notNull(),
    takenAt: instantColumn("taken_at"),
    receivedSha256: varchar("received_sha256", { length: 64 }).notNull(),
    storedSha256: varchar("stored_sha256", { length: 64 }).notNull(),
    receivedAt: instantColumn("received_at").notNull(),
    content: bytesColumn("content").notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.unitId, table.jobId, table.photoId] }),
    foreignKey({
      columns: [table.unitId, table.jobId],
      foreignColumns: [openJobs.unitId, openJobs.jobId],
      name: "sheet_photos_of_an_open_job",
    }),
    unique("sheet_photos_once_a_job").on(table.unitId, table.jobId, table.attachmentId),
  ],
);

/** What the desk lacks for a claim and asks the technician for. */
export const technicianAsks = pgTable(
  "technician_asks",
  {
    unitId: keyColumn("unit_id").notNull(),
    jobId: keyColumn("job_id").notNull(),
    /** The item of the evidence check that is missing. */
    item: varchar("item", { length: 200 }).notNull(),
    label: text("label").notNull(),
    /** The check to be done, or the picture to be taken; both empty for anything else, such as a paper. */
    check: varchar("check_key", { length: 60 }),
    subject: text("subject").$type<PhotoSubject>(),
    technician: text("technician"),
    askedAt: instantColumn("asked_at").notNull(),
    askedBy: text("asked_by").notNull(),
    answeredAt: instantColumn("answered_at"),
    answer: text("answer").$type<"given" | "cannot be had">(),
    note: text("note").notNull().default(""),
  },
  (table) => [
    primaryKey({ columns: [table.unitId, table.jobId, table.item] }),
    foreignKey({
      columns: [table.unitId, table.jobId],
      foreignColumns: [jobs.unitId, jobs.jobId],
      name: "technician_asks_of_a_job",
    }).onDelete("cascade"),
    index("technician_asks_open").on(table.technician, table.askedAt).where(sql`answered_at is null`),
    check("technician_asks_answer_in_order", sql`${table.answeredAt} >= ${table.askedAt}`),
    check("technician_asks_answer_whole", sql`(${table.answeredAt} is null) = (${table.answer} is null)`),
    check("technician_asks_known_answer", sql`${table.answer} in ('given', 'cannot be had')`),
  ],
);
