import { readFile, writeFile } from "node:fs/promises";
import { z } from "zod";
import type { Matching } from "@/lib/intake/matching/matching";
import { matchingSchema } from "@/lib/intake/matching/matching-schema";
import type { FormWishes } from "@/lib/intake/tables/look-at-table";
import { delimiters, encodings, type TableForm } from "@/lib/intake/tables/table-form";

const matchingFile = z.object({
  form: z.object({
    encoding: z.enum(encodings).optional(),
    delimiter: z.enum(delimiters).optional(),
    sheet: z.string().optional(),
    headerRow: z.int().min(0).optional(),
  }),
  matching: matchingSchema,
});

export interface StatedMatching {
  readonly wishes: FormWishes;
  readonly matching: Matching;
}

/** @throws Error that says which place of the file is wrong */
export async function readMatchingFile(path: string): Promise<StatedMatching> {
  const text = await readFile(path, "utf8").catch(() => {
    throw new Error(`${path}: there is no such file, or it may not be read.`);
  });
  const read = matchingFile.safeParse(parsed(path, text));
  if (read.success) return { wishes: read.data.form, matching: read.data.matching };
  const places = read.error.issues.map(({ path: place, message }) => `  ${place.join(".")}: ${message}`);
  throw new Error([`${path}: this is no matching.`, ...places].join("\n"));
}

function parsed(path: string, text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new Error(`${path}: this is not JSON: ${error instanceof Error ? error.message : error}`);
  }
}

export async function writeMatchingFile(path: string, form: TableForm, matching: Matching): Promise<void> {
  await writeFile(path, `${JSON.stringify({ form, matching }, undefined, 2)}\n`);
}
