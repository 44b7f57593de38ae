// The company itself: one JSON document.
import { z } from "zod";
import { civilDay } from "@/lib/calendar/civil-day";
import { type Day, readDay } from "@/lib/calendar/day";
import { type Currency, currencies } from "@/lib/domain/money";
import { type Parsed, shownValue } from "./parsed";

export const shopSchemaName = "ohmsworth/shop/1";

export const shopDocument = z.strictObject({
  schema: z.literal(shopSchemaName),
  name: z
    .string()
    .trim()
    .min(1, "is blank")
    .max(200, "is longer than 200 characters")
    .meta({ description: "Name of the company." }),
  currency: z
    .enum(currencies, `is not one of ${currencies.join(", ")}`)
    .meta({ description: "Its own currency, ISO 4217." }),
  timeZone: z
    .string()
    .meta({ description: "IANA name of its time zone.", examples: ["America/Los_Angeles"] })
    .refine(
      (zone) => civilDay("2000-01-01T00:00:00Z", zone).kind === "day",
      "is not the name of a time zone, such as America/Los_Angeles",
    ),
  territory: z.string().regex(/^[A-Z]{2}(-[A-Z0-9]{1,3})?$/, "is not a country or state by ISO 3166, such as US-CA"),
  recordsFrom: z
    .string()
    .nullable()
    .meta({ description: "First day from which every failure is on record; null where that was always so." })
    .refine((text) => text === null || readDay(text) !== undefined, "is neither null nor a day written YYYY-MM-DD"),
  madeGraceMonths: z
    .int("is not a whole number of months")
    .min(0, "is negative")
    .max(60, "is more than 60 months")
    .meta({ description: "Months from manufacture to service, for units without a better date." }),
  repeatDays: z
    .int("is not a whole number of days")
    .min(0, "is negative")
    .max(366, "is more than 366 days")
    .default(30)
    .meta({
      description:
        "Trouble reported again on the same unit within this many days of a completion is suggested as a return.",
      examples: [30],
    }),
  demo: z.boolean("is neither true nor false").meta({ description: "True where all of it is invented." }),
});

export interface Shop {
  readonly name: string;
  readonly currency: Currency;
  readonly timeZone: string;
  readonly territory: string;
  readonly recordsFrom: Day | undefined;
  readonly madeGraceMonths: number;
  readonly repeatDays: number;
  readonly demo: boolean;
}

/** The document in; the shop, or every problem with its place, out. */
export function parseShop(document: unknown): Parsed<Shop> {
  const read = shopDocument.safeParse(document);
  if (read.success) {
    const { schema: _, recordsFrom, ...shop } = read.data;
    return { ok: true, value: { ...shop, recordsFrom: recordsFrom === null ? undefined : readDay(recordsFrom) } };
  }
  const problems = read.error.issues.map((issue) => ({
    column: issue.path.join("."),
    value: shownValue(valueAt(document, issue.path)),
    problem: issue.message,
    fix: "Correct it as described at /files/columns.",
  }));
  return { ok: false, problems };
}

function valueAt(document: unknown, path: readonly PropertyKey[]): string {
  let at: unknown = document;
  for (const step of path)
    at = typeof at === "object" && at !== null ? (at as Record<PropertyKey, unknown>)[step] : undefined; // any step may be absent
  return at === undefined ? "" : JSON.stringify(at);
}
