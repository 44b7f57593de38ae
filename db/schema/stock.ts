// What lies on the shelf and in the trucks, and what is on its way.
import { sql } from "drizzle-orm";
import {
  bigint,
  check,
  foreignKey,
  index,
  integer,
  jsonb,
  pgTable,
  primaryKey,
  text,
  unique,
  uuid,
  varchar,
} from "drizzle-orm/pg-core";
import type { Currency } from "@/lib/domain/money";
import type { Criticality, MovementKind, OrderState } from "@/lib/domain/stock";
import { centsColumn, dayColumn, instantColumn, keyColumn } from "./columns";

/** What the company says of a part that it keeps: how it is bought and how sure it wants to be. */
export const stockParts = pgTable(
  "stock_parts",
  {
    /** The number in upper case, letters and digits only. */
    partKey: text("part_key").primaryKey(),
    partNumber: text("part_number").notNull(),
    /** Days from order to delivery, one entry for each delivery that somebody remembers; together they are its distribution. */
    leadDays: jsonb("lead_days").$type<readonly number[]>().notNull(),
    /** Days between two looks at the shelf. */
    reviewDays: integer("review_days").notNull(),
    pack: integer("pack").notNull(),
    orderCostCents: centsColumn("order_cost_cents").notNull(),
    /** What a year on the shelf costs, in percent of the part's cost. */
    holdingPercent: integer("holding_percent").notNull(),
    criticality: text("criticality").$type<Criticality>().notNull(),
    /** Wanted: short in no more than one of so many waits for a delivery. */
    shortOneIn: integer("short_one_in").notNull(),
    supplier: text("supplier").notNull(),
    unitCostCents: centsColumn("unit_cost_cents"),
    currency: varchar("currency", { length: 3 }).$type<Currency>().notNull(),
    /** Newer number, where the catalogue does not say it. */
    supersededBy: text("superseded_by"),
    /** Last day on which the maker takes orders. */
    lastBuyOn: dayColumn("last_buy_on"),
    setBy: text("set_by").notNull(),
    setAt: instantColumn("set_at").notNull(),
    /** Counts every change; whoever writes says which one was seen. */
    version: integer("version").notNull(),
  },
  (table) => [
    check("stock_parts_keyed", sql`${table.partKey} <> ''`),
    check("stock_parts_reviewed", sql`${table.reviewDays} between 1 and 365`),
    check("stock_parts_pack", sql`${table.pack} between 1 and 100000`),
    check("stock_parts_costs_not_negative", sql`${table.orderCostCents} >= 0 and ${table.unitCostCents} >= 0`),
    check("stock_parts_holding", sql`${table.holdingPercent} between 0 and 500`),
    check("stock_parts_known_criticality", sql`${table.criticality} in ('vital', 'usual', 'can wait')`),
    check("stock_parts_wanted_service", sql`${table.shortOneIn} between 2 and 1000`),
    check("stock_parts_superseded_by_another", sql`${table.supersededBy} <> ${table.partNumber}`),
  ],
);

/** The order list: what somebody means to order, ordered, and got. */
export const partOrders = pgTable(
  "part_orders",
  {
    orderId: integer("order_id").primaryKey().generatedAlwaysAsIdentity(),
    partKey: text("part_key").notNull(),
    partNumber: text("part_number").notNull(),
    description: text("description").notNull(),
    supplier: text("supplier").notNull(),
    quantity: integer("quantity").notNull(),
    unitCostCents: centsColumn("unit_cost_cents"),
    currency: varchar("currency", { length: 3 }).$type<Currency>().notNull(),
    state: text("state").$type<OrderState>().notNull(),
    orderedOn: dayColumn("ordered_on"),
    expectedOn: dayColumn("expected_on"),
    /** Sum of its receipts in the movements. */
    received: integer("received").notNull(),
    closedOn: dayColumn("closed_on"),
    /** Why so many: the arithmetic of the day on which it was put on the list. */
    why: text("why").notNull(),
    note: text("note").notNull(),
    version: integer("version").notNull(),
  },
  (table) => [
    index("part_orders_by_part").on(table.partKey),
    index("part_orders_by_state").on(table.state),
    check("part_orders_some_quantity", sql`${table.quantity} between 1 and 1000000`),
    check("part_orders_known_state", sql`${table.state} in ('draft', 'ordered', 'received', 'cancelled')`),
    check("part_orders_not_more_than_ordered", sql`${table.received} between 0 and ${table.quantity}`),
    check("part_orders_received_is_all", sql`${table.state} <> 'received' or ${table.received} = ${table.quantity}`),
    check(
      "part_orders_ordered_has_day",
      sql`(${table.state} in ('ordered', 'received')) <= (${table.orderedOn} is not null)`,
    ),
    check("part_orders_in_order", sql`${table.orderedOn} <= ${table.expectedOn}`),
    check(
      "part_orders_closed_has_day",
      sql`(${table.state} in ('received', 'cancelled')) = (${table.closedOn} is not null)`,
    ),
    check("part_orders_cost_not_negative", sql`${table.unitCostCents} >= 0`),
  ],
);

/** What was done with an order line, in order; never changed. */
export const partOrderEvents = pgTable(
  "part_order_events",
  {
    orderId: integer("order_id")
      .notNull()
      .references(() => partOrders.orderId),
    version: integer("version").notNull(),
    at: instantColumn("at").notNull(),
    by: text("by").notNull(),
    what: text("what").$type<"added" | "changed" | "ordered" | "received" | "cancelled" | "reopened">().notNull(),
    detail: jsonb("detail").notNull(),
  },
  (table) => [primaryKey({ columns: [table.orderId, table.version] })],
);

/** Every change of stock. Nothing here is ever changed or deleted: stock is the sum of it. */
export const stockMovements = pgTable(
  "stock_movements",
  {
    movementId: bigint("movement_id", { mode: "number" }).primaryKey().generatedAlwaysAsIdentity(),
    partKey: text("part_key").notNull(),
    partNumber: text("part_number").notNull(),
    /** Empty for the shop's own shelf, else the technician whose truck it is. */
    place: text("place").notNull(),
    kind: text("kind").$type<MovementKind>().notNull(),
    /** Pieces that came (above 0) or went. */
    quantity: integer("quantity").notNull(),
    /** Pieces put aside for a job (above 0) or set free again. */
    reserved: integer("reserved").notNull(),
    happenedOn: dayColumn("happened_on").notNull(),
    recordedAt: instantColumn("recorded_at").notNull(),
    by: text("by").notNull(),
    note: text("note").notNull(),
    orderId: integer("order_id"),
    jobNumber: text("job_number"),
    jobId: keyColumn("job_id"),
    /** The form or event that it came from, and which of its movements: the same one twice is one. */
    requestKey: uuid("request_key").notNull(),
    requestLine: integer("request_line").notNull(),
  },
  (table) => [
    unique("stock_movements_once").on(table.requestKey, table.requestLine),
    index("stock_movements_by_part").on(table.partKey, table.movementId),
    index("stock_movements_by_job").on(table.jobId),
    foreignKey({ columns: [table.orderId], foreignColumns: [partOrders.orderId], name: "stock_movements_of_an_order" }),
    check(
      "stock_movements_known_kind",
      sql`${table.kind} in ('receipt', 'use', 'count', 'return', 'scrap', 'move', 'reserve', 'release')`,
    ),
    check(
      "stock_movements_signed",
      sql`case ${table.kind} when 'receipt' then ${table.quantity} > 0 and ${table.reserved} = 0
        when 'scrap' then ${table.quantity} < 0 and ${table.reserved} = 0
        when 'reserve' then ${table.quantity} = 0 and ${table.reserved} > 0
        when 'release' then ${table.quantity} = 0 and ${table.reserved} < 0
        when 'move' then ${table.quantity} <> 0 and ${table.reserved} = 0
        when 'count' then ${table.reserved} = 0
        else ${table.quantity} <> 0 and ${table.reserved} = 0 end`,
    ),
    check("stock_movements_receipt_of_order", sql`${table.orderId} is null or ${table.kind} = 'receipt'`),
    check("stock_movements_by_somebody", sql`btrim(${table.by}) <> ''`),
  ],
);

/** Sums of the movements by part and place, added up anew in the transaction of every movement. */
export const stockLevels = pgTable(
  "stock_levels",
  {
    partKey: text("part_key").notNull(),
    place: text("place").notNull(),
    onHand: integer("on_hand").notNull(),
    reserved: integer("reserved").notNull(),
    /** Day of the first count or receipt: jobs completed from then on take from here. */
    keptFrom: dayColumn("kept_from").notNull(),
    lastCountedOn: dayColumn("last_counted_on"),
  },
  (table) => [primaryKey({ columns: [table.partKey, table.place] })],
);
