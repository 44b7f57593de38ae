// Makers, models, components, symptoms: the words that everything else is counted by. Reference tables on every machine.
import { sql } from "drizzle-orm";
import { check, integer, pgTable, primaryKey, text, unique, varchar } from "drizzle-orm/pg-core";
import { batchColumn, dayColumn, doubleColumn } from "./columns";

export const productTypes = pgTable("product_types", {
  key: varchar("key", { length: 60 }).primaryKey(),
  name: text("name").notNull(),
});

export const makers = pgTable("makers", {
  makerId: integer("maker_id").primaryKey().generatedAlwaysAsIdentity(),
  name: text("name").notNull(),
  /** Upper case, letters and digits only: "Hearth & Wick" and "HEARTH AND WICK" stay apart, "Hearth-Wick" and "HEARTHWICK" meet. */
  normalised: text("normalised").notNull().unique(),
});

export const models = pgTable(
  "models",
  {
    modelId: integer("model_id").primaryKey().generatedAlwaysAsIdentity(),
    makerId: integer("maker_id")
      .notNull()
      .references(() => makers.makerId),
    productType: varchar("product_type", { length: 60 })
      .notNull()
      .references(() => productTypes.key),
    number: text("number").notNull(),
    normalised: text("normalised").notNull(),
  },
  (table) => [unique("models_one_number_a_maker").on(table.makerId, table.normalised)],
);

export const components = pgTable("components", {
  key: varchar("key", { length: 60 }).primaryKey(),
  name: text("name").notNull(),
  partOf: varchar("part_of", { length: 60 }),
  /** Empty on what comes with the program. */
  batchId: batchColumn(),
});

/** Which product types have the component: its exposure is the unit-years of these types and no others. */
export const componentUses = pgTable(
  "component_uses",
  {
    component: varchar("component", { length: 60 })
      .notNull()
      .references(() => components.key),
    productType: varchar("product_type", { length: 60 })
      .notNull()
      .references(() => productTypes.key),
    batchId: batchColumn(),
  },
  (table) => [primaryKey({ columns: [table.component, table.productType] })],
);

export const symptoms = pgTable("symptoms", {
  key: varchar("key", { length: 60 }).primaryKey(),
  name: text("name").notNull(),
});

export const symptomUses = pgTable(
  "symptom_uses",
  {
    symptom: varchar("symptom", { length: 60 })
      .notNull()
      .references(() => symptoms.key),
    productType: varchar("product_type", { length: 60 })
      .notNull()
      .references(() => productTypes.key),
  },
  (table) => [primaryKey({ columns: [table.symptom, table.productType] })],
);

/** Expected range of one check on one model, with the source and mark that travel with the value. */
export const expectedRanges = pgTable(
  "expected_ranges",
  {
    modelId: integer("model_id")
      .notNull()
      .references(() => models.modelId),
    check: varchar("check_key", { length: 60 }).notNull(),
    low: doubleColumn("low"),
    high: doubleColumn("high"),
    unit: text("unit").notNull(),
    condition: text("condition").notNull().default(""),
    source: text("source").notNull(),
    mark: text("mark").notNull(),
    statedOn: dayColumn("stated_on"),
    batchId: batchColumn(),
  },
  (table) => [
    primaryKey({ columns: [table.modelId, table.check, table.condition] }),
    check("expected_ranges_not_empty", sql`${table.low} is not null or ${table.high} is not null`),
    check("expected_ranges_low_to_high", sql`${table.low} <= ${table.high}`),
  ],
);
