// What stands out, as computed at the end of a week, and what people said of it. Runs can be computed anew; marks and notes
// are only ever added.
import { sql } from "drizzle-orm";
import {
  bigint,
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
} from "drizzle-orm/pg-core";
import type { ProductType } from "@/lib/domain/product-type";
import type { CellFunnel } from "@/lib/signals/cell-funnel";
import type { MarkKind } from "@/lib/signals/signal-marks";
import type { WordKind } from "@/lib/signals/signal-record";
import type { LeadCell, RunSignal } from "@/lib/signals/signal-run";
import { makers } from "./catalogue";
import { bytesColumn, dayColumn, doubleColumn, instantColumn } from "./columns";

/** One computation of all signals, as of the last day of a week. */
export const signalRuns = pgTable(
  "signal_runs",
  {
    asOf: dayColumn("as_of").primaryKey(),
    /** What was on file: a run with another basis is computed anew. */
    basis: text("basis").notNull(),
    computedAt: instantColumn("computed_at").notNull(),
    outcome: text("outcome").$type<"followed" | "too-short" | "no-units">().notNull(),
    /** Weeks of records; given where they are too few. */
    weeks: integer("weeks"),
    cells: integer("cells").notNull(),
    stories: integer("stories").notNull(),
    byLuck: doubleColumn("by_luck").notNull(),
    /** All that was looked at over the last year, between the limits that chance keeps; null in runs from before it was kept. */
    funnel: jsonb("funnel").$type<CellFunnel>(),
  },
  (table) => [
    check("signal_runs_known_outcome", sql`${table.outcome} in ('followed', 'too-short', 'no-units')`),
    check("signal_runs_short_has_weeks", sql`(${table.outcome} = 'too-short') = (${table.weeks} is not null)`),
    check("signal_runs_counts", sql`${table.cells} >= 0 and ${table.stories} >= 0 and ${table.byLuck} >= 0`),
  ],
);

/** The lines of one run's list. */
export const foundSignals = pgTable(
  "found_signals",
  {
    asOf: dayColumn("as_of").notNull(),
    /** Word, kind of machine and maker: the same from week to week. */
    signalKey: text("signal_key").notNull(),
    wordKind: text("word_kind").$type<WordKind>().notNull(),
    word: text("word").notNull(),
    productType: text("product_type").$type<ProductType>().notNull(),
    maker: text("maker").notNull(),
    onsetOn: dayColumn("onset_on").notNull(),
    observed: integer("observed").notNull(),
    expected: doubleColumn("expected").notNull(),
    chance: doubleColumn("chance").notNull(),
    adjusted: doubleColumn("adjusted").notNull(),
    /** The cell that leads it, week by week. */
    lead: jsonb("lead").$type<LeadCell>().notNull(),
    within: jsonb("within").$type<RunSignal["within"]>().notNull(),
    symptoms: jsonb("symptoms").$type<readonly string[]>().notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.asOf, table.signalKey] }),
    foreignKey({ columns: [table.asOf], foreignColumns: [signalRuns.asOf], name: "found_signals_of_a_run" }).onDelete(
      "cascade",
    ),
    check("found_signals_known_kind", sql`${table.wordKind} in ('component', 'fault_code', 'symptom')`),
    check("found_signals_counts", sql`${table.observed} >= 0 and ${table.expected} >= 0`),
    check("found_signals_chances", sql`${table.chance} between 0 and 1 and ${table.adjusted} between 0 and 1`),
  ],
);

/** What the weeks of a quarter are judged by, as it was settled when the quarter began; one row. Thrown away when anything that it rests on has changed. */
export const settledQuarter = pgTable("settled_quarter", {
  only: boolean("only").primaryKey().default(true),
  /** Of all that it rests on: see db/queries/settled-print.ts. */
  print: text("print").notNull(),
  settledUntil: dayColumn("settled_until").notNull(),
  /** The quarter and the histories that were kept, as Node's serialiser writes them, deflated. */
  content: bytesColumn("content").notNull(),
});

/** What a person said of a signal. Never changed or removed: taking one back is a mark of its own. */
export const signalMarks = pgTable(
  "signal_marks",
  {
    markId: bigint("mark_id", { mode: "number" }).primaryKey().generatedAlwaysAsIdentity(),
    signalKey: text("signal_key").notNull(),
    kind: text("kind").$type<MarkKind>().notNull(),
    undoes: bigint("undoes", { mode: "number" }),
    reason: text("reason").notNull(),
    by: text("by").notNull(),
    at: instantColumn("at").notNull(),
    /** The run that was looked at, and what it counted since the onset. */
    asOf: dayColumn("as_of").notNull(),
    observed: integer("observed").notNull(),
    expected: doubleColumn("expected").notNull(),
  },
  (table) => [
    index("signal_marks_by_signal").on(table.signalKey),
    unique("signal_marks_undone_once").on(table.undoes),
    foreignKey({ columns: [table.undoes], foreignColumns: [table.markId], name: "signal_marks_undo_a_mark" }),
    check("signal_marks_known_kind", sql`${table.kind} in ('watch', 'not_now', 'explain', 'dismiss', 'undo')`),
    check("signal_marks_undo_names_one", sql`(${table.kind} = 'undo') = (${table.undoes} is not null)`),
    check("signal_marks_have_reason", sql`${table.kind} not in ('explain', 'dismiss') or btrim(${table.reason}) <> ''`),
    check("signal_marks_by_somebody", sql`btrim(${table.by}) <> ''`),
  ],
);

/** What technicians should know of some units before they open them; shown on the check sheet of those serials. */
export const technicianNotes = pgTable(
  "technician_notes",
  {
    noteId: bigint("note_id", { mode: "number" }).primaryKey().generatedAlwaysAsIdentity(),
    makerId: integer("maker_id")
      .notNull()
      .references(() => makers.makerId),
    /** Model number as in the catalogue; null: every model of the maker. */
    modelNumber: text("model_number"),
    /** Normalised serials, both ends included; null: every serial. */
    serialFrom: text("serial_from"),
    serialTo: text("serial_to"),
    component: text("component"),
    words: text("words").notNull(),
    signalKey: text("signal_key"),
    by: text("by").notNull(),
    at: instantColumn("at").notNull(),
    liftedAt: instantColumn("lifted_at"),
    liftedBy: text("lifted_by"),
  },
  (table) => [
    index("technician_notes_by_maker").on(table.makerId),
    check("technician_notes_say_something", sql`btrim(${table.words}) <> '' and btrim(${table.by}) <> ''`),
    check("technician_notes_both_ends", sql`(${table.serialFrom} is null) = (${table.serialTo} is null)`),
    check("technician_notes_in_order", sql`${table.serialFrom} <= ${table.serialTo}`),
    check("technician_notes_lifted_by", sql`(${table.liftedAt} is null) = (${table.liftedBy} is null)`),
  ],
);
