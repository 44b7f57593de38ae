import type { z } from "zod";
import { readerOf } from "./cell";
import type { Cells } from "./row-problems";

/**
 * What the schema makes of a row in which every cell is right, without walking through the schema for each row: its
 * columns are read by the same readers. Undefined where the schema has to say what is wrong.
 */
export function rightCells<Schema extends z.ZodObject>(schema: Schema, cells: Cells): z.output<Schema> | undefined {
  const known = columnsOf(schema);
  if (known === undefined) return undefined;
  const row: Record<string, unknown> = { ...known.blank };
  for (const { column, read } of known.columns) {
    const reading = read(cells[column]);
    if (!("value" in reading)) return undefined;
    row[column] = reading.value;
  }
  return row as z.output<Schema>; // all columns of the schema, each read as it reads them
}

interface Columns {
  readonly columns: readonly { readonly column: string; readonly read: NonNullable<ReturnType<typeof readerOf>> }[];
  /** A row without values: one that is made from it need not grow column by column. */
  readonly blank: Readonly<Record<string, undefined>>;
}

/** By schema; undefined where a column is read in some other way. */
const columnsBySchema = new WeakMap<z.ZodObject, Columns | undefined>();

function columnsOf(schema: z.ZodObject): Columns | undefined {
  if (!columnsBySchema.has(schema)) columnsBySchema.set(schema, compiled(schema));
  return columnsBySchema.get(schema);
}

function compiled(schema: z.ZodObject): Columns | undefined {
  const names = Object.keys(schema.shape);
  const columns = names.flatMap((column) => {
    const read = readerOf(schema.shape[column] as z.ZodType); // a shape holds zod types, which its own type does not say
    return read === undefined ? [] : [{ column, read }];
  });
  if (columns.length < names.length) return undefined;
  return { columns, blank: Object.fromEntries(names.map((name) => [name, undefined])) };
}
