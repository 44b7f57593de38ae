// One claim in a form that any program can read. It is grouped as service-claim messages commonly are (header, unit,
// problem, findings with measurements, action, parts, money, attachments by hash) under names of our own; no list of
// codes is taken from any of them. Every property is always there: null says that it was not stated.
import { z } from "zod";
import { payerKinds } from "@/lib/domain/job";
import { productTypeKeys } from "@/lib/domain/product-type";
import { unitUses } from "@/lib/domain/unit";
import { neutralFindings } from "./neutral-findings-document";
import { amount, coded, day, instant, sha256, text } from "./neutral-words";

export const neutralClaimVersion = "ohmsworth/claim/1";

const header = z.strictObject({
  claimNumber: text.nullable().describe("The servicer's own number; null before a draft is kept."),
  jobNumber: text,
  preparedOn: day.describe("The day on which coverage and clocks were judged."),
  servicer: text,
  payer: z.strictObject({ kind: z.enum(payerKinds), name: text }),
  policy: z.strictObject({ key: text, name: text, version: z.int().min(1), source: text }),
  campaign: coded.nullable(),
  authorization: z.strictObject({ number: text, on: day.nullable() }).nullable(),
  fileBy: z.strictObject({ lastDay: day, counted: z.enum(["sending", "receipt"]) }),
});

const unit = z.strictObject({
  maker: text,
  model: text,
  productType: z.enum(productTypeKeys),
  serial: text.nullable(),
  use: z.enum(unitUses),
  territory: text.nullable().describe("Country, or country and state, by ISO 3166."),
  ownerNumber: z.int().min(1),
  made: z.strictObject({ from: day, until: day }).nullable().describe("Equal where the day is known."),
  shippedOn: day.nullable(),
  soldOn: day.nullable(),
  deliveredOn: day.nullable(),
  installedOn: day.nullable(),
  occupiedOn: day.nullable(),
  registeredOn: day.nullable(),
});

const problem = z.strictObject({
  complaint: text.describe("As it was written down; never rewritten."),
  symptom: coded.nullable(),
  requestedOn: day.nullable(),
});

const action = z.strictObject({
  correction: text.describe("As the technician wrote it."),
  firstVisitOn: day.nullable(),
  diagnosedOn: day.nullable(),
  partsOrderedOn: day.nullable(),
  partsReceivedOn: day.nullable(),
  completedOn: day,
  visits: z.int().min(0),
  labourMinutes: z.number().min(0).nullable(),
});

const part = z.strictObject({
  line: z.int().min(1),
  partNumber: text,
  description: text,
  component: coded.nullable(),
  quantity: z.int().min(1),
  unitCost: amount,
  distributor: text.nullable(),
  invoiceNumber: text.nullable(),
  invoiceLine: text.nullable(),
  invoicedOn: day.nullable(),
});

const money = z.strictObject({
  lines: z.array(
    z.strictObject({
      line: z.int().min(1),
      item: z.enum(["parts", "labour", "trip", "diagnosis", "handling"]),
      description: text,
      quantity: z.int().min(1),
      amount,
      basis: text.describe("How the amount came about, in words with its numbers."),
      partNumber: text.nullable(),
      invoiceNumber: text.nullable(),
      invoiceLine: text.nullable(),
    }),
  ),
  deductions: z.array(
    z.strictObject({
      kind: z.enum(["parts_cap", "claim_cap", "deductible", "per_claim_limit"]),
      amount,
      basis: text,
    }),
  ),
  total: amount.describe("Lines less deductions."),
});

const coverage = z.strictObject({
  items: z.array(
    z.strictObject({ item: z.enum(["parts", "labour", "trip", "diagnosis"]), verdict: text, sentence: text }),
  ),
  decided: z
    .strictObject({ event: z.enum(["reported", "visit", "completed"]), on: day })
    .nullable()
    .describe("The event whose day decides, and that day."),
  arithmetic: z.array(text),
  notes: z.array(text).describe("Where the wording decides, and what the law may add. No legal advice."),
});

const earlierJob = z.strictObject({
  jobNumber: text,
  completedOn: day,
  symptom: coded.nullable(),
  component: coded.nullable(),
  cause: coded,
});

const attachment = z.strictObject({
  name: text,
  subject: coded,
  caption: text,
  mediaType: z.enum(["image/jpeg", "application/pdf"]),
  bytes: z.int().min(1),
  sha256,
  takenAt: instant.nullable().describe("As the device said; null where it did not."),
});

export const neutralClaimDocument = z.strictObject({
  schema: z.literal(neutralClaimVersion),
  header,
  unit,
  problem,
  findings: neutralFindings,
  action,
  parts: z.array(part),
  money,
  coverage,
  earlierJobs: z.array(earlierJob),
  attachments: z.array(attachment),
  notSupplied: z.array(text).describe("What the claim needs and lacks, one sentence each."),
});

export type NeutralClaim = z.infer<typeof neutralClaimDocument>;
