import { z } from "zod";
import type { MendRequest } from "@/db/writes/mend-held-rows";

const text = z.string().max(20_000);

const mendForm = z.object({
  batch: z.coerce.number().int().positive(),
  mode: z.enum(["dry run", "add"]),
  /** All that are wrong alike. */
  column: text.optional(),
  value: text.optional(),
  problem: text.optional(),
  text: text.optional(),
  /** Or one row, whose cells come as `cell:` and their column, beside `was:` and their column. */
  row: z.coerce.number().int().positive().optional(),
});

/** What a person wrote in place of held cells; undefined where the form did not arrive whole. */
export function readMendForm(form: FormData): (Omit<MendRequest, "batchId"> & { readonly batch: number }) | undefined {
  const read = mendForm.safeParse(Object.fromEntries(form));
  if (!read.success) return undefined;
  const { batch, mode, column, value, problem, text: written, row } = read.data;
  if (row !== undefined) return { batch, mode, changes: cellsOf(form, row) };
  if (column === undefined || value === undefined || problem === undefined || written === undefined) return undefined;
  const changes = written === value ? [] : [{ column, value: written, alike: { column, value, problem } }];
  return { batch, mode, changes };
}

function cellsOf(form: FormData, row: number): MendRequest["changes"] {
  return [...form].flatMap(([name, value]) => {
    if (!name.startsWith("cell:") || typeof value !== "string") return [];
    const column = name.slice("cell:".length);
    return form.get(`was:${column}`) === value ? [] : [{ column, value, rows: [row] }];
  });
}
