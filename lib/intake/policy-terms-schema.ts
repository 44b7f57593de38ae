// The zod side of lib/domain/policy-terms, policy-start and policy-campaign.
import { z } from "zod";
import { day, readDay } from "@/lib/calendar/day";
import { anchorDays, countedUnits } from "@/lib/calendar/term";
import { payItems } from "@/lib/domain/pay-item";
import { startEventKeys } from "@/lib/domain/policy-start";

export const dayText = z
  .string()
  .meta({ format: "date", examples: ["2024-01-31"] })
  .refine((text) => readDay(text) !== undefined, "is no day of the calendar written YYYY-MM-DD")
  .transform((text) => day(text));

export const filled = z.string().trim().min(1, "is blank");

export const cents = z
  .int("is not a whole number of cents")
  .min(0, "is negative")
  .max(100_000_000, "is more than a million; amounts are in cents")
  .meta({ description: "Whole cents of the policy's currency." });

export const countedTerm = z.strictObject({
  n: z.int("is not a whole number").min(1, "is not above 0").max(1200, "is longer than any term"),
  unit: z.enum(countedUnits, "is not day, month or year"),
});

export const term = z.union([countedTerm, z.strictObject({ unit: z.literal("lifetime") })], {
  error: "is neither a number of days, months or years nor a lifetime",
});

export const anchorDay = z
  .enum(anchorDays, "is neither exclude nor include")
  .meta({ description: "exclude: the first day is day 0 (from); include: it is day 1 (beginning with)." });

const startEvent = z.enum(startEventKeys, "is not a start event");

const startPoint = z.strictObject({ event: startEvent, plus: countedTerm.optional() });

export const startRule = z.strictObject({ from: startPoint, fallbacks: z.array(startPoint) });

const paid = z.array(z.enum(payItems, "is not parts, labour, trip or diagnosis")).min(1, "names no pay item");

export const coverTerm = z.strictObject({
  covers: z.discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("whole_unit") }),
    z.strictObject({ kind: z.literal("class"), class: filled }),
    z.strictObject({ kind: z.literal("adjustment") }),
    z.strictObject({ kind: z.literal("cosmetic") }),
  ]),
  pays: paid,
  term,
  from: startPoint.optional(),
  anchorDay: anchorDay.optional(),
});

export const componentClass = z.strictObject({
  key: filled,
  name: filled,
  members: z.array(filled).min(1, "has no member"),
});

export const cap = z.strictObject({ from: startEvent, term: countedTerm });

export const registrationRule = z.strictObject({ within: countedTerm, termIfRegistered: term, termOtherwise: term });

export const useRule = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("any") }),
  z.strictObject({ kind: z.literal("household_only") }),
  z.strictObject({ kind: z.literal("commercial_term"), term: countedTerm, pays: paid }),
]);

export const replacementPartRule = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("remainder") }),
  z.strictObject({
    kind: z.literal("own_term"),
    term: countedTerm,
    pays: paid,
    combine: z.enum(["later_of_with_remainder", "own_term_only"]),
  }),
]);

export const transferRule = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("follows_unit") }),
  z.strictObject({ kind: z.literal("original_purchaser_only") }),
  z.strictObject({ kind: z.literal("register_within"), within: countedTerm }),
]);

export const serialRange = z
  .strictObject({ from: filled, to: filled })
  .refine(({ from, to }) => from.length === to.length, "has ends of different length, so serials cannot be compared")
  .refine(({ from, to }) => from <= to, "ends before it begins");

export const campaign = z.strictObject({
  key: filled,
  name: filled,
  serials: z.array(serialRange).min(1, "names no serials"),
  component: filled,
  startsOn: dayText.optional(),
  endsOn: dayText.optional(),
  pays: paid,
  sourceDocument: filled,
});
