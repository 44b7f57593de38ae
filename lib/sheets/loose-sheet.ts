// A sheet as it stands in its editor: numbers as they were typed, nothing refused. What a draft keeps.
import { z } from "zod";
import type { PhotoSubject } from "@/lib/domain/job";
import { photoSubjectKeys } from "@/lib/domain/job";
import type { OwnCheck } from "@/lib/domain/own-check";
import { meterModes, powerStates, sourceMarks } from "@/lib/domain/reading";
import type { SheetStep } from "./sheet";

const text = z.coerce.string().catch("");
const looseOwn = z.object({
  key: text,
  name: text,
  points: text,
  power: z.enum(powerStates).catch("off"),
  mode: z.enum(meterModes).catch("observation"),
  unit: text.optional(),
  low: text,
  high: text,
  source: text,
  mark: z.enum(sourceMarks).catch("common practice, no source"),
  says: text,
  words: z
    .array(
      z.object({ word: text, state: z.enum(["good", "bad", "outside"]).catch("good"), cause: z.string().optional() }),
    )
    .catch([]),
  cautions: z.array(text).catch([]),
});
const looseStep = z.object({
  check: text,
  own: looseOwn.optional(),
  minutes: text,
  times: text,
  photo: z.enum(photoSubjectKeys).optional().catch(undefined),
  note: text,
  cautions: z.array(text).catch([]),
  after: z
    .object({ check: text, came: z.union([z.enum(["good", "bad"]), z.object({ word: text })]) })
    .optional()
    .catch(undefined),
});

export type LooseOwn = z.output<typeof looseOwn>;
export type LooseStep = z.output<typeof looseStep>;

/** The steps of a draft; empty where it holds none. */
export function looseSteps(document: unknown): readonly LooseStep[] {
  const read = z.object({ steps: z.array(looseStep) }).safeParse(document);
  return read.success ? read.data.steps : [];
}

/** A published step as its editor begins with it. */
export function loosened(step: SheetStep): LooseStep {
  return {
    check: step.check,
    ...(step.own === undefined ? {} : { own: loosenedOwn(step.own) }),
    minutes: String(step.minutes),
    times: String(step.times),
    ...(step.photo === undefined ? {} : { photo: step.photo satisfies PhotoSubject }),
    note: step.note,
    cautions: [...step.cautions],
    ...(step.after === undefined ? {} : { after: { check: step.after.check, came: step.after.came } }),
  };
}

function loosenedOwn({ low, high, unit, words, cautions, ...own }: OwnCheck): LooseOwn {
  return {
    ...own,
    ...(unit === undefined ? {} : { unit }),
    low: low === undefined ? "" : String(low),
    high: high === undefined ? "" : String(high),
    words: words.map(({ word, state, cause }) => ({ word, state, ...(cause === undefined ? {} : { cause }) })),
    cautions: [...cautions],
  };
}
