import { z } from "zod";
import { photoSubjectKeys } from "@/lib/domain/job";
import { checkOf } from "@/lib/evidence/checks";
import type { SheetStep } from "./sheet";

export type ParsedSheet =
  | { readonly ok: true; readonly steps: readonly SheetStep[] }
  | { readonly ok: false; readonly problems: readonly string[] };

const step = z.object({
  check: z.string().refine((key) => checkOf(key) !== undefined, { error: "is no check of the catalogue" }),
  minutes: z
    .number({ error: "must be a number of minutes" })
    .min(0.5, "must be half a minute or more")
    .max(240, "must be four hours or less"),
  times: z.int().min(1).max(6),
  photo: z
    .enum(photoSubjectKeys)
    .optional()
    .transform((value) => value ?? undefined),
  note: z
    .string()
    .max(500, "is longer than 500 characters")
    .transform((text) => text.replaceAll(/\p{Cc}+/gu, " ").trim()),
});

/** The steps of an edited sheet, from outside or from the database; or every problem, named by its step. */
export function parseSheetDocument(document: unknown): ParsedSheet {
  const read = z.object({ steps: z.array(step).min(1, "has no step") }).safeParse(document);
  if (!read.success)
    return {
      ok: false,
      problems: read.error.issues.map((issue) => `Step ${placeOf(issue.path)}: ${issue.message}.`),
    };
  const { steps } = read.data;
  const twice = steps.filter(({ check }, place) => steps.findIndex((other) => other.check === check) !== place);
  if (twice.length > 0)
    return { ok: false, problems: twice.map(({ check }) => `${checkOf(check)?.name ?? check} is on the sheet twice.`) };
  return { ok: true, steps };
}

function placeOf([, index, field]: readonly PropertyKey[]): string {
  return `${typeof index === "number" ? index + 1 : ""}${field === undefined ? "" : `, ${String(field)}`}`;
}
