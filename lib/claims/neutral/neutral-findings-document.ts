import { z } from "zod";
import { meterModes, powerStates, sourceMarks } from "@/lib/domain/reading";
import { evidenceKinds, itemStates } from "@/lib/evidence/evidence-check";
import { coded, instant, text } from "./neutral-words";

const outcome = z
  .discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("number"), value: z.number(), unit: text }),
    z.strictObject({ kind: z.literal("open") }),
    z.strictObject({ kind: z.literal("short") }),
    z.strictObject({ kind: z.literal("no_reading") }),
    z.strictObject({ kind: z.literal("finding"), word: text }),
    z.strictObject({ kind: z.literal("code"), code: text }),
  ])
  .describe("Open and short are states of a circuit, never numbers.");

const expected = z
  .strictObject({
    low: z.number().nullable(),
    high: z.number().nullable(),
    unit: text,
    source: text,
    mark: z.enum(sourceMarks).describe("What kind of source it is."),
  })
  .describe("An end that is null is open.");

const measurement = z.strictObject({
  number: z.int().min(1),
  check: coded,
  pointA: text.nullable(),
  pointB: text.nullable(),
  mode: z.enum(meterModes),
  power: z.enum(powerStates).describe("State of the machine while it was taken."),
  isolated: z.boolean().nullable(),
  loadConnected: z.boolean().nullable(),
  commanded: z.boolean().nullable(),
  temperatureC: z.number().nullable(),
  outcome,
  expected: expected.nullable(),
  verdict: z.enum(["proves_nothing", "finding", "code", "inside", "below", "above", "open", "short"]),
  verdictWords: text,
  note: text.nullable(),
  takenAt: instant.nullable(),
});

const evidenceItem = z.strictObject({
  key: text,
  label: text,
  state: z.enum(itemStates),
  foundIn: z.array(
    z.discriminatedUnion("kind", [
      z.strictObject({ kind: z.literal("measurement"), number: z.int() }),
      z.strictObject({ kind: z.literal("attachment"), name: text }),
      z.strictObject({ kind: z.literal("part"), line: z.int() }),
      z.strictObject({ kind: z.literal("header"), property: z.enum(["authorization", "cause"]) }),
    ]),
  ),
});

/** What was found: the part, how it failed, and the readings that show it. */
export const neutralFindings = z.strictObject({
  cause: coded,
  component: coded.nullable(),
  failureMode: coded.nullable(),
  causeNote: text.describe("As the technician wrote it."),
  measurements: z.array(measurement),
  evidence: z.strictObject({
    kind: z.enum(evidenceKinds),
    rule: text.nullable().describe("The entry of the evidence rules that was used."),
    items: z.array(evidenceItem),
    verdict: text,
  }),
});
