// The zod side of lib/domain/policy-pay and policy-clocks.
import { z } from "zod";
import { anchorDay, cents, countedTerm, dayText, filled } from "./policy-terms-schema";

const hours = z.number().min(0, "is negative").max(100, "is more than 100 hours");

export const paySchedule = z.strictObject({
  labour: z.discriminatedUnion("kind", [
    z.strictObject({
      kind: z.literal("schedule"),
      jobClasses: z.array(z.strictObject({ name: filled, components: z.array(filled), cents })),
      otherwiseCents: cents,
    }),
    z.strictObject({
      kind: z.literal("hours"),
      centsPerHour: cents,
      entries: z.array(z.strictObject({ component: filled, hours })),
      otherwiseHours: hours,
      capHours: hours.optional(),
    }),
    z.strictObject({ kind: z.literal("cost"), capCents: cents.optional() }),
  ]),
  trip: z.discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("included") }),
    z.strictObject({ kind: z.literal("flat"), cents }),
    z.strictObject({ kind: z.literal("cost"), capCents: cents.optional() }),
    z.strictObject({
      kind: z.literal("per_mile"),
      centsPerMile: z.number().min(0, "is negative").max(10_000, "is more than 100.00 a mile; the rate is in cents"),
      includedMiles: z.int("is not a whole number").min(0, "is negative"),
      capCents: cents.optional(),
    }),
  ]),
  parts: z.strictObject({
    handlingPercent: z.number().min(0, "is negative").max(100, "is more than the part itself"),
    capCents: cents.optional(),
  }),
  diagnosis: z.discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("none") }),
    z.strictObject({ kind: z.literal("flat"), cents }),
  ]),
  claimCapCents: cents.optional(),
});

export const authorizationRule = z.strictObject({
  partsOverCents: cents.optional(),
  claimOverCents: cents.optional(),
  components: z.array(filled),
  withoutProofOfPurchase: z.boolean(),
  secondOf: z.array(filled).optional(),
  diagnosisOnly: z.boolean().optional(),
  validFor: countedTerm.optional(),
});

export const policyClocks = z.strictObject({
  filing: z.strictObject({
    within: countedTerm,
    anchorDay,
    by: z.enum(["sending", "receipt"], "is neither sending nor receipt"),
    roll: z.enum(["none", "next_business_day"], "is neither none nor next_business_day"),
    holidays: z.array(dayText).optional(),
  }),
  resubmission: z.strictObject({ within: countedTerm, times: z.int().min(0, "is negative") }),
  partHold: z.strictObject({ within: countedTerm, from: z.enum(["filed", "paid"], "is neither filed nor paid") }),
});
