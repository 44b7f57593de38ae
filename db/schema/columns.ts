import { bigint, customType, date, doublePrecision, timestamp } from "drizzle-orm/pg-core";
import type { Day } from "@/lib/calendar/day";

/** A calendar day as ISO text; never a JavaScript Date, which would bring a time zone. */
export const dayColumn = (name: string) => date(name, { mode: "string" }).$type<Day>();

export const instantColumn = (name: string) => timestamp(name, { withTimezone: true, mode: "string" });

export const doubleColumn = (name: string) => doublePrecision(name);

/** Whole cents; fits a JavaScript number exactly up to 90 million million. */
export const centsColumn = (name: string) => bigint(name, { mode: "number" });

/** Sixty-three bit key made from the natural key, so that a load needs no look-up; text in TypeScript. */
export const keyColumn = customType<{ data: string; driverData: string }>({
  dataType: () => "bigint",
  fromDriver: (value) => String(value),
});

export const bytesColumn = customType<{ data: Buffer; driverData: Buffer }>({ dataType: () => "bytea" });

/** The load that brought a row; small whole numbers, counted by the database. */
export const batchColumn = () => bigint("batch_id", { mode: "number" });
