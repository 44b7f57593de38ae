// One coverage policy as a document. What is accepted here has the type of lib/domain/policy.ts; the compiler checks that.
import { z } from "zod";
import { type Cause, causeKeys } from "@/lib/domain/cause";
import { payerKinds } from "@/lib/domain/job";
import { currencies } from "@/lib/domain/money";
import { warrantyDesignations } from "@/lib/domain/policy";
import { decisiveEvents } from "@/lib/domain/policy-start";
import { type ProductType, productTypeKeys } from "@/lib/domain/product-type";
import { sourceMarks } from "@/lib/domain/reading";
import { authorizationRule, paySchedule, policyClocks } from "./policy-pay-schema";
import {
  anchorDay,
  campaign,
  cap,
  cents,
  componentClass,
  countedTerm,
  coverTerm,
  dayText,
  filled,
  registrationRule,
  replacementPartRule,
  serialRange,
  startRule,
  transferRule,
  useRule,
} from "./policy-terms-schema";

export const policyDocument = z.strictObject({
  key: z
    .string()
    .regex(/^[a-z0-9][a-z0-9_-]{0,79}$/, "is not a key of small letters, digits, _ and -")
    .meta({ description: "The same in every version." }),
  version: z.int("is not a whole number").min(1, "is not above 0"),
  name: filled,
  maker: filled.optional().meta({ description: "Absent where any maker's units are covered." }),
  payer: z.strictObject({ kind: z.enum(payerKinds, `is not one of ${payerKinds.join(", ")}`), name: filled }),
  appliesTo: z
    .strictObject({
      productTypes: z.array(
        z.enum(productTypeKeys as readonly [ProductType, ...ProductType[]], "is not a product type"),
      ), // the table is not empty
      models: z.array(filled),
      serials: z.array(serialRange),
    })
    .meta({ description: "Empty lists do not narrow. A model matches by its beginning." }),
  effectiveFrom: dayText.meta({ description: "First sale date it governs." }),
  effectiveTo: dayText.optional().meta({ description: "Last sale date it governs." }),
  sourceDocument: filled,
  sourceMark: z.enum(sourceMarks, `is not one of ${sourceMarks.join(", ")}`),
  approvedBy: filled,
  approvedOn: dayText,
  currency: z.enum(currencies, `is not one of ${currencies.join(", ")}`),
  start: startRule,
  anchorDay,
  decisiveEvent: z.enum(decisiveEvents, `is not one of ${decisiveEvents.join(", ")}`),
  classes: z.array(componentClass),
  terms: z.array(coverTerm),
  caps: z.array(cap),
  registration: registrationRule.optional(),
  designation: z
    .enum(warrantyDesignations, "is neither full nor limited")
    .optional()
    .meta({ description: "United States: what the paper calls itself (15 USC 2303)." }),
  transfer: transferRule,
  use: useRule,
  territories: z.array(
    z.string().regex(/^[A-Z]{2}(-[A-Z0-9]{1,3})?$/, "is not a country or state by ISO 3166, such as US-CA"),
  ),
  replacementPart: replacementPartRule,
  replacementUnit: z.enum(["remainder_of_original", "new_term"]),
  tolling: z.boolean(),
  excludedCauses: z.array(z.enum(causeKeys as readonly [Cause, ...Cause[]], "is not a cause")), // the table is not empty
  excludedComponents: z.array(filled),
  campaigns: z.array(campaign),
  contract: z
    .strictObject({
      type: z.enum(["extended", "home_service"], "is neither extended nor home_service"),
      waiting: countedTerm.optional(),
      deductibleCents: cents.optional(),
      perClaimLimitCents: cents.optional(),
    })
    .optional(),
  repeat: z
    .strictObject({ within: countedTerm, same: z.enum(["component", "complaint", "component_or_complaint"]) })
    .optional(),
  goodwill: z.strictObject({ authorizationRequired: z.boolean(), within: countedTerm.optional() }).optional(),
  clocks: policyClocks,
  pay: paySchedule,
  authorization: authorizationRule,
});
