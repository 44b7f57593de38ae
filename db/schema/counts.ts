// Roll-ups from which every rate and curve is computed exactly. Kept inside the transaction that changes units or jobs:
// what was touched, a model or the units of one day, is counted anew from its rows, never adjusted by differences, so they
// cannot drift.
import { sql } from "drizzle-orm";
import { bigint, check, index, integer, pgTable, primaryKey, text, unique, varchar } from "drizzle-orm/pg-core";
import type { Cause, CountedAs } from "@/lib/domain/cause";
import { models } from "./catalogue";
import { dayColumn, keyColumn } from "./columns";

/** How many units of the register share their half-year of production and the days that bound their observation; an open end is null. */
export const unitWindows = pgTable(
  "unit_windows",
  {
    modelId: integer("model_id")
      .notNull()
      .references(() => models.modelId),
    inServiceOn: dayColumn("in_service_on").notNull(),
    observedFrom: dayColumn("observed_from").notNull(),
    retiredOn: dayColumn("retired_on"),
    units: integer("units").notNull(),
    /** Half-years since 1970; null where the register does not know it. */
    madeHalf: integer("made_half"),
    /** Sum of hashes of their keys: another one where other units have these days, though they be as many. */
    whichUnits: bigint("which_units", { mode: "bigint" }).notNull(),
  },
  (table) => [
    unique("unit_windows_one_row")
      .on(table.modelId, table.inServiceOn, table.observedFrom, table.retiredOn, table.madeHalf)
      .nullsNotDistinct(),
    check("unit_windows_some", sql`${table.units} > 0`),
    check("unit_windows_observed_in_service", sql`${table.observedFrom} >= ${table.inServiceOn}`),
  ],
);

/** Units that carry no exposure, per model and reason. */
export const unplacedUnits = pgTable(
  "unplaced_units",
  {
    modelId: integer("model_id")
      .notNull()
      .references(() => models.modelId),
    reason: text("reason").$type<UnplacedReason>().notNull(),
    units: integer("units").notNull(),
  },
  (table) => [
    unique("unplaced_units_one_row").on(table.modelId, table.reason),
    check("unplaced_units_some", sql`${table.units} > 0`),
  ],
);

export type UnplacedReason = "not_in_register" | "no_in_service_day" | "never_observed";

/** How many jobs share model, component, symptom, cause and the days that place them in age. Null days: the unit carries no exposure. */
export const jobCells = pgTable(
  "job_cells",
  {
    modelId: integer("model_id")
      .notNull()
      .references(() => models.modelId),
    component: varchar("component", { length: 60 }),
    symptom: varchar("symptom", { length: 60 }),
    cause: varchar("cause", { length: 60 }).$type<Cause>().notNull(),
    countedAs: text("counted_as").$type<Exclude<CountedAs, "nothing">>().notNull(),
    inServiceOn: dayColumn("in_service_on"),
    observedFrom: dayColumn("observed_from"),
    retiredOn: dayColumn("retired_on"),
    failedOn: dayColumn("failed_on").notNull(),
    /** Day of the same unit's previous counted failure of this component: null on the first, and on calls. */
    previousFailedOn: dayColumn("previous_failed_on"),
    jobs: integer("jobs").notNull(),
  },
  (table) => [
    unique("job_cells_one_row")
      .on(
        table.modelId,
        table.component,
        table.symptom,
        table.cause,
        table.inServiceOn,
        table.observedFrom,
        table.retiredOn,
        table.failedOn,
        table.previousFailedOn,
      )
      .nullsNotDistinct(),
    index("job_cells_by_component").on(table.component),
    check("job_cells_some", sql`${table.jobs} > 0`),
    check("job_cells_known_count", sql`${table.countedAs} in ('failure', 'call')`),
  ],
);

/** Jobs of units that have more than one counted job: what the robust interval needs to know which unit failed again. */
export const repeatedJobs = pgTable(
  "repeated_jobs",
  {
    unitId: keyColumn("unit_id").notNull(),
    jobId: keyColumn("job_id").notNull(),
    modelId: integer("model_id")
      .notNull()
      .references(() => models.modelId),
    component: varchar("component", { length: 60 }),
    symptom: varchar("symptom", { length: 60 }),
    cause: varchar("cause", { length: 60 }).$type<Cause>().notNull(),
    countedAs: text("counted_as").$type<Exclude<CountedAs, "nothing">>().notNull(),
    inServiceOn: dayColumn("in_service_on").notNull(),
    observedFrom: dayColumn("observed_from").notNull(),
    retiredOn: dayColumn("retired_on"),
    failedOn: dayColumn("failed_on").notNull(),
  },
  (table) => [
    unique("repeated_jobs_one_row").on(table.unitId, table.jobId),
    index("repeated_jobs_by_model").on(table.modelId),
  ],
);

/**
 * Jobs that look like a return to an earlier one though their file does not say so: the same component of the same
 * unit, reported within the company's repeat days after the earlier completion. A suggestion, never the file's word.
 */
export const suggestedCallbacks = pgTable(
  "suggested_callbacks",
  {
    unitId: keyColumn("unit_id").notNull(),
    jobId: keyColumn("job_id").notNull(),
    modelId: integer("model_id")
      .notNull()
      .references(() => models.modelId),
    callbackOf: text("callback_of").notNull(),
    /** Days from the earlier completion to this report. */
    days: integer("days").notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.unitId, table.jobId] }),
    index("suggested_callbacks_by_model").on(table.modelId),
    check("suggested_callbacks_later", sql`${table.days} >= 0`),
  ],
);
