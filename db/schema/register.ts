// Units in service: the denominators.
import { sql } from "drizzle-orm";
import { boolean, check, index, integer, pgTable, primaryKey, text } from "drizzle-orm/pg-core";
import type { InServiceBasis, UnitUse } from "@/lib/domain/unit";
import { makers, models } from "./catalogue";
import { batchColumn, dayColumn, instantColumn, keyColumn } from "./columns";

export const units = pgTable(
  "units",
  {
    /** Made from maker and normalised serial; for a job without a serial, from its job number. */
    unitId: keyColumn("unit_id").notNull(),
    makerId: integer("maker_id")
      .notNull()
      .references(() => makers.makerId),
    modelId: integer("model_id")
      .notNull()
      .references(() => models.modelId),
    /** As given; null on a placeholder unit. */
    serial: text("serial"),
    serialNormalised: text("serial_normalised"),
    /** False on a placeholder: a job came without a serial. */
    identified: boolean("identified").notNull(),
    /** True where a register of units names it. Units known only from their jobs must not count as exposure: they are known because they failed. */
    inRegister: boolean("in_register").notNull(),
    madeFrom: dayColumn("made_from"),
    madeUntil: dayColumn("made_until"),
    shippedOn: dayColumn("shipped_on"),
    soldOn: dayColumn("sold_on"),
    deliveredOn: dayColumn("delivered_on"),
    installedOn: dayColumn("installed_on"),
    occupiedOn: dayColumn("occupied_on"),
    registeredOn: dayColumn("registered_on"),
    retiredOn: dayColumn("retired_on"),
    recordedFrom: dayColumn("recorded_from"),
    inServiceOn: dayColumn("in_service_on"),
    inServiceBasis: text("in_service_basis").$type<InServiceBasis>(),
    use: text("use").$type<UnitUse>().notNull(),
    territory: text("territory"),
    ownerNumber: integer("owner_number").notNull(),
    batchId: batchColumn(),
  },
  (table) => [
    primaryKey({ columns: [table.unitId] }),
    index("units_by_model").on(table.modelId),
    index("units_by_serial").on(table.serialNormalised),
    check("units_identified_have_serial", sql`${table.identified} = (${table.serialNormalised} is not null)`),
    check("units_placeholder_not_in_register", sql`${table.identified} or not ${table.inRegister}`),
    check("units_made_in_order", sql`${table.madeFrom} <= ${table.madeUntil}`),
    check("units_made_both_ends", sql`(${table.madeFrom} is null) = (${table.madeUntil} is null)`),
    check("units_made_before_sale", sql`${table.madeFrom} <= ${table.soldOn}`),
    check("units_service_has_basis", sql`(${table.inServiceOn} is null) = (${table.inServiceBasis} is null)`),
    check("units_retire_after_service", sql`${table.inServiceOn} <= ${table.retiredOn}`),
    check("units_known_use", sql`${table.use} in ('household', 'commercial')`),
    check("units_owner_counts_from_one", sql`${table.ownerNumber} >= 1`),
  ],
);

/** What is known of a unit for its cover, apart from the register, by file or by hand; each change by hand is in hand_edits. */
export const unitFacts = pgTable(
  "unit_facts",
  {
    unitId: keyColumn("unit_id")
      .notNull()
      .references(() => units.unitId),
    firstUsedOn: dayColumn("first_used_on"),
    /** Day on which the present owner took it over from another. */
    acquiredOn: dayColumn("acquired_on"),
    transferRegisteredOn: dayColumn("transfer_registered_on"),
    /** Day it was handed over in exchange for another unit, and that unit's serial. */
    exchangedOn: dayColumn("exchanged_on"),
    exchangedSerial: text("exchanged_serial"),
    serialRemoved: boolean("serial_removed").notNull().default(false),
    /** The load that answers for it; empty where it was entered by hand. */
    batchId: batchColumn(),
  },
  (table) => [
    primaryKey({ columns: [table.unitId] }),
    check("unit_facts_transfer_in_order", sql`${table.acquiredOn} <= ${table.transferRegisteredOn}`),
    check(
      "unit_facts_exchange_has_day",
      sql`${table.exchangedSerial} is null or (${table.exchangedOn} is not null and btrim(${table.exchangedSerial}) <> '')`,
    ),
  ],
);

/** Spans during which the unit was out of the owner's hands for a repair under cover, both days counted. */
export const repairSpans = pgTable(
  "repair_spans",
  {
    unitId: keyColumn("unit_id")
      .notNull()
      .references(() => units.unitId),
    fromOn: dayColumn("from_on").notNull(),
    untilOn: dayColumn("until_on").notNull(),
    /** Paper or record that shows it. */
    source: text("source").notNull(),
    enteredBy: text("entered_by").notNull(),
    enteredAt: instantColumn("entered_at").notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.unitId, table.fromOn] }),
    check("repair_spans_in_order", sql`${table.fromOn} <= ${table.untilOn}`),
    check("repair_spans_has_source", sql`btrim(${table.source}) <> '' and btrim(${table.enteredBy}) <> ''`),
  ],
);
