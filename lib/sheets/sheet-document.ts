// The steps of an edited sheet as a document, from a form or from the database. Numbers may be text as somebody typed it.
import { z } from "zod";
import { type Cause, causeKeys, causes } from "@/lib/domain/cause";
import { photoSubjectKeys } from "@/lib/domain/job";
import { isOwnKey, type OwnCheck } from "@/lib/domain/own-check";
import { meterModes, powerStates, sourceMarks } from "@/lib/domain/reading";
import { checkOf } from "@/lib/evidence/checks";
import { isCaution } from "@/lib/evidence/own-check";
import type { SheetStep } from "./sheet";
import { typedValue } from "./typed-value";

export type ParsedSheet =
  | { readonly ok: true; readonly steps: readonly SheetStep[] }
  | { readonly ok: false; readonly problems: readonly SheetProblem[] };

export interface SheetProblem {
  /** Place of the step on the sheet, from 0; undefined where the whole sheet is meant. */
  readonly step: number | undefined;
  /** Names the step and says what to do. */
  readonly sentence: string;
}

const words = (most: number) =>
  z
    .string()
    .max(most, `is longer than ${most} characters`)
    .transform((text) => text.replaceAll(/\p{Cc}+/gu, " ").trim());
const said = (most: number) => words(most).pipe(z.string().min(1, "is blank: fill it in"));

const typedNumber = z.union([z.number(), z.string()]).transform((value, context) => {
  const read = typeof value === "number" ? ({ kind: "value", value } as const) : typedValue(value);
  if (read.kind === "value" && Number.isFinite(read.value)) return read.value;
  context.addIssue(read.kind === "unclear" ? `${read.sentence}` : "is blank: type a number");
  return z.NEVER;
});
/** Blank is no number. */
const maybeNumber = z
  .union([z.number(), z.string(), z.null()])
  .optional()
  .transform((value) => (typeof value === "string" && value.trim() === "" ? undefined : (value ?? undefined)))
  .pipe(typedNumber.optional())
  .transform((value) => value ?? undefined);

const ownWord = z
  .object({
    word: said(60),
    state: z.enum(["good", "bad", "outside"]),
    cause: z
      .enum(causeKeys as [Cause, ...Cause[]]) // the list is not empty
      .optional()
      .transform((cause) => cause ?? undefined),
  })
  .refine(({ state, cause }) => (state === "outside") === (cause !== undefined && causes[cause].kind === "outside"), {
    error: "names a cause outside the part where its state is “outside”, and none otherwise: choose both alike",
    path: ["cause"],
  });

const own = z.object({
  key: z.string().refine(isOwnKey, "is not a key that the editor makes"),
  name: said(60),
  points: said(160),
  power: z.enum(powerStates),
  mode: z.enum(meterModes.filter((mode) => mode !== "fault_code")),
  unit: words(20)
    .optional()
    .transform((unit) => (unit === "" ? undefined : (unit ?? undefined))),
  low: maybeNumber,
  high: maybeNumber,
  source: words(200),
  mark: z.enum(sourceMarks),
  says: said(200),
  words: z.array(ownWord).max(8, "are more than eight"),
  cautions: z.array(z.string().refine(isCaution, "is no caution of the list")),
});

const after = z.object({
  check: z.string().max(60),
  came: z.union([z.enum(["good", "bad"]), z.object({ word: z.string().max(60) })]),
});

const step = z.object({
  check: z.string(),
  own: own.optional().transform((check): OwnCheck | undefined => check ?? undefined),
  minutes: typedNumber.pipe(
    z.number().min(0.5, "must be half a minute or more").max(240, "must be four hours or less"),
  ),
  times: typedNumber.pipe(z.int("must be a whole number").min(1, "must be 1 or more").max(6, "must be 6 or fewer")),
  photo: z
    .enum(photoSubjectKeys)
    .optional()
    .transform((value) => value ?? undefined),
  note: words(500),
  cautions: z
    .array(z.string().refine(isCaution, "is no caution of the list"))
    .default([])
    .transform((keys) => keys.filter(isCaution)),
  after: after.optional().transform((value) => value ?? undefined),
});

/** The steps; or every problem, named by its step. */
export function parseSheetDocument(document: unknown): ParsedSheet {
  const read = z.object({ steps: z.array(step).min(1, "needs at least one check") }).safeParse(document);
  if (!read.success)
    return { ok: false, problems: read.error.issues.map(({ path, message }) => problemAt(document, path, message)) };
  const { steps } = read.data;
  const problems = steps.flatMap(({ check, own: mine }, place): SheetProblem[] => {
    const name = mine?.name ?? checkOf(check)?.name;
    if (name === undefined || (mine !== undefined && mine.key !== check))
      return [{ step: place, sentence: `Step ${place + 1}: “${check}” is no check of the catalogue.` }];
    const first = steps.findIndex((other) => other.check === check);
    return first < place
      ? [{ step: place, sentence: `${named(place, name)} is on the sheet twice. Take one off.` }]
      : [];
  });
  return problems.length > 0 ? { ok: false, problems } : { ok: true, steps };
}

/** “Step 3, Pump winding” */
export function named(place: number, name: string): string {
  return `Step ${place + 1}, ${name}:`;
}

function problemAt(document: unknown, [, place, ...field]: readonly PropertyKey[], message: string): SheetProblem {
  if (typeof place !== "number") return { step: undefined, sentence: `The sheet ${message}.` };
  const raw = z
    .object({
      steps: z.array(z.object({ check: z.string().optional(), own: z.object({ name: z.string() }).optional() })),
    })
    .safeParse(document);
  const given = raw.success ? raw.data.steps[place] : undefined;
  const name = given?.own?.name.trim() || checkOf(given?.check ?? "")?.name || "new check";
  const where = field.map((part) => (typeof part === "number" ? String(part + 1) : (fieldWords[String(part)] ?? "")));
  const place2 = where.filter((part) => part !== "").join(" ");
  return {
    step: place,
    sentence: `${named(place, name)} ${place2} ${message.replace(/\.$/, "")}.`.replaceAll(/ +/g, " "),
  };
}

/** Fields as the form calls them. */
const fieldWords: Readonly<Record<string, string>> = {
  minutes: "minutes",
  times: "readings",
  photo: "photo",
  note: "your own words",
  cautions: "caution",
  after: "what it waits for",
  name: "name",
  points: "where",
  power: "state of the machine",
  mode: "meter",
  unit: "unit",
  low: "lower end",
  high: "upper end",
  source: "source of the range",
  mark: "mark of the range",
  says: "what a good result says",
  words: "word",
  word: "",
  state: "what it means",
  cause: "cause",
};
