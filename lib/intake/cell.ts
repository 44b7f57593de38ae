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
  return z
    .string()
    .meta({ description, examples: [type.example], minLength: 1, ...type.json })
    .transform((text, context) =>
      text.trim() === ""
        ? refuse(context, "is blank", `Fill it in, for example ${type.example}.`)
        : readInto(type, text, context),
    );
}

/** A column that may be left out or blank, which means unknown. */
export function optional<T>(type: CellType<T>, description: string) {
  return z
    .string()
    .optional()
    .meta({ description, examples: [type.example], ...blankToo(type) })
    .transform((text, context) =>
      text === undefined || text.trim() === "" ? undefined : readInto(type, text, context),
    );
}

/** A column that may be left out or blank, which means `otherwise`. */
export function withDefault<T>(type: CellType<T>, otherwise: T, description: string) {
  return z
    .string()
    .optional()
    .meta({ description: `${description} Blank: ${String(otherwise)}.`, examples: [type.example], ...blankToo(type) })
    .transform((text, context) =>
      text === undefined || text.trim() === "" ? otherwise : readInto(type, text, context),
    );
}

type Context = z.core.$RefinementCtx<unknown>;

function readInto<T>(type: CellType<T>, text: string, context: Context): T {
  if (text.length > longestCell) {
    return refuse(
      context,
      `has ${text.length} characters; the limit is ${longestCell}`,
      "Shorten it, and look for a quotation mark that is opened and never closed.",
    );
  }
  if (text.includes("\0")) return refuse(context, "contains a NUL character", "Export the file anew as UTF-8 text.");
  const read = type.read(text);
  return "value" in read ? read.value : refuse(context, read.problem, read.fix);
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
