import { z } from "zod";

/** The value of one cell that is not blank, or what is wrong with it and what to do. */
export type CellReading<T> = { readonly value: T } | { readonly problem: string; readonly fix: string };

/** How one kind of cell is read, and how the published schema describes it. */
export interface CellType<T> {
  readonly read: (text: string) => CellReading<T>;
  readonly json: {
    readonly pattern?: string;
    readonly enum?: readonly string[];
    readonly maxLength?: number;
    readonly format?: string;
  };
  readonly example: string;
}

/** No cell of any column needs more; a longer one is a slip of quoting, or meant to do harm. */
const longestCell = 20_000;

/** A column that every row fills in. */
export function required<T>(type: CellType<T>, description: string) {
  const blank = { problem: "is blank", fix: `Fill it in, for example ${type.example}.` };
  const read = (text: string) => (text.trim() === "" ? blank : readFilled(type, text));
  const cell = z
    .string()
    .meta({ description, examples: [type.example], minLength: 1, ...type.json })
    .transform((text, context) => taken(read(text), context));
  readers.set(cell, (text) => (text === undefined ? blank : read(text)));
  return cell;
}

/** A column that may be left out or blank, which means unknown. */
export function optional<T>(type: CellType<T>, description: string) {
  return mayBeBlank<T, undefined>(type, undefined, description);
}

/** A column that may be left out or blank, which means `otherwise`. */
export function withDefault<T>(type: CellType<T>, otherwise: T, description: string) {
  return mayBeBlank<T, T>(type, otherwise, `${description} Blank: ${String(otherwise)}.`);
}

function mayBeBlank<T, Otherwise>(type: CellType<T>, otherwise: Otherwise, description: string) {
  const blank = { value: otherwise };
  const read = (text: string | undefined): CellReading<T | Otherwise> =>
    text === undefined || text.trim() === "" ? blank : readFilled(type, text);
  const cell = z
    .string()
    .optional()
    .meta({ description, examples: [type.example], ...blankToo(type) })
    .transform((text, context) => taken(read(text), context));
  readers.set(cell, read);
  return cell;
}

type ColumnReader = (text: string | undefined) => CellReading<unknown>;

const readers = new WeakMap<z.ZodType, ColumnReader>();

/** What the schema of a column reads its text with, for whoever reads many rows; undefined for a schema of another file. */
export function readerOf(cell: z.ZodType): ColumnReader | undefined {
  return readers.get(cell);
}

type Context = z.core.$RefinementCtx<unknown>;

function readFilled<T>(type: CellType<T>, text: string): CellReading<T> {
  if (text.length > longestCell)
    return {
      problem: `has ${text.length} characters; the limit is ${longestCell}`,
      fix: "Shorten it, and look for a quotation mark that is opened and never closed.",
    };
  if (text.includes("\0")) return { problem: "contains a NUL character", fix: "Export the file anew as UTF-8 text." };
  return type.read(text);
}

function taken<T>(reading: CellReading<T>, context: Context): T {
  return "value" in reading ? reading.value : refuse(context, reading.problem, reading.fix);
}

function refuse(context: Context, message: string, fix: string): never {
  context.addIssue({ code: "custom", message, params: { fix } });
  return z.NEVER;
}

function blankToo<T>(type: CellType<T>): Record<string, unknown> {
  const { pattern, enum: words, ...rest } = type.json;
  return {
    ...rest,
    ...(pattern === undefined ? {} : { pattern: `^$|${pattern}` }),
    ...(words === undefined ? {} : { enum: ["", ...words] }),
  };
}
