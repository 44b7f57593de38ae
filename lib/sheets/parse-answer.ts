import { z } from "zod";
import { isOwnKey } from "@/lib/domain/own-check";
import { meterModes, powerStates } from "@/lib/domain/reading";
import { checkOf } from "@/lib/evidence/checks";
import { type SheetAnswer, type SkipReason, skipReasons } from "./sheet-answer";

export type ParsedAnswer =
  | { readonly ok: true; readonly answer: SheetAnswer }
  | { readonly ok: false; readonly problems: readonly AnswerProblem[] };

export interface AnswerProblem {
  /** Where in the body, such as given.outcome.value. */
  readonly at: string;
  readonly sentence: string;
}

const finite = z.number({ error: "must be a number" }).refine(Number.isFinite, "must be a finite number");
const words = (most: number) =>
  z
    .string()
    .max(most, `is longer than ${most} characters`)
    .transform((text) => text.replaceAll(/[\p{Cc}\p{Co}]+/gu, " ").trim());
const optional = <T extends z.ZodType>(schema: T) => schema.optional().transform((value) => value ?? undefined);
const flag = optional(z.boolean());

const outcome = z.discriminatedUnion("kind", [
  z.object({ kind: z.literal("number"), value: finite, unit: words(20).pipe(z.string().min(1, "is missing")) }),
  z.object({ kind: z.literal("open") }),
  z.object({ kind: z.literal("short") }),
  z.object({ kind: z.literal("no_reading") }),
  z.object({ kind: z.literal("finding"), word: words(60).pipe(z.string().min(1, "is missing")) }),
  z.object({ kind: z.literal("code"), code: words(40).pipe(z.string().min(1, "is missing")) }),
]);

const reading = z
  .object({
    kind: z.literal("reading"),
    mode: z.enum(meterModes),
    outcome,
    power: z.enum(powerStates),
    pointA: optional(words(80)),
    pointB: optional(words(80)),
    isolated: flag,
    loadConnected: flag,
    commanded: flag,
    temperatureC: optional(
      finite.pipe(z.number().min(-80, "is colder than any machine").max(400, "is hotter than any oven")),
    ),
    sheetLow: optional(finite),
    sheetHigh: optional(finite),
    sheetReference: optional(words(200)),
    cautionsRead: z.boolean(),
  })
  .refine(({ sheetLow, sheetHigh }) => sheetLow === undefined || sheetHigh === undefined || sheetLow <= sheetHigh, {
    error: "the sheet’s lower end is above its upper end",
    path: ["sheetLow"],
  })
  .refine(({ power, cautionsRead }) => power !== "live" || cautionsRead, {
    error: "a live step needs its cautions read first",
    path: ["cautionsRead"],
  });

const skip = z.object({
  kind: z.literal("skip"),
  reason: z.enum(Object.keys(skipReasons) as [SkipReason, ...SkipReason[]]), // Object.keys loses the key type
});

const answer = z.object({
  id: z.uuid("must be a UUID"),
  sequence: z.int().min(1, "counts from 1").max(10_000, "is more than a sheet can hold"),
  check: words(60).refine((key) => checkOf(key) !== undefined || isOwnKey(key), {
    error: "is no check of the catalogue",
  }),
  time: z.int().min(1).max(20),
  given: z.discriminatedUnion("kind", [reading, skip]),
  note: words(2_000),
  at: z.iso.datetime({ offset: true, error: "must be a time with its offset" }),
  standsFor: z.array(z.uuid("must be a UUID")).max(100, "names more tries than a step can have").optional(),
});

/** What a phone sent as one answer; or every problem with it. Whether a reading proves anything is not asked here: it is kept all the same. */
export function parseAnswer(body: unknown): ParsedAnswer {
  const read = answer.safeParse(body);
  if (read.success) return { ok: true, answer: read.data };
  return {
    ok: false,
    problems: read.error.issues.map((issue) => ({
      at: issue.path.join("."),
      sentence: `${issue.path.join(".")} ${issue.message}`,
    })),
  };
}
