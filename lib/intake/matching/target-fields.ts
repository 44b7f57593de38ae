import type { z } from "zod";
import { dayCell, dayMonthOrYearCell, instantCell } from "../cell-days";
import { amount, decimalNumber, yesNo } from "../cell-numbers";
import { catalogueKey, catalogueKeys, identifier, territory } from "../cell-texts";
import { rowSchemas, type TableKind } from "../file-kinds";
import type { TargetColumn } from "./matching";

/** What kind of value a column of ours takes, which decides how a cell of somebody's file is read for it. */
export type FieldSort =
  | "day"
  | "made"
  | "moment"
  | "money"
  | "number"
  | "count"
  | "word"
  | "key"
  | "keys"
  | "yes or no"
  | "identifier"
  | "territory"
  | "text";

export interface TargetField {
  /** As a matching names it: with the prefix where it is a part line's column in a file of jobs. */
  readonly target: TargetColumn;
  readonly kind: TableKind;
  readonly column: string;
  readonly sort: FieldSort;
  readonly needed: boolean;
  /** The closed list of words, where there is one. */
  readonly words: readonly string[];
  readonly description: string;
}

/** Every column that a file of this kind can fill; a file of jobs may carry its part lines. */
export function targetFields(kind: TableKind): readonly TargetField[] {
  const known = fieldsByKind.get(kind);
  if (known !== undefined) return known;
  const own = fieldsOf(kind, "");
  const fields = kind === "jobs" ? [...own, ...fieldsOf("part-lines", "part-lines.").filter(notTheJobs)] : own;
  fieldsByKind.set(kind, fields);
  return fields;
}

const fieldsByKind = new Map<TableKind, readonly TargetField[]>();

/** The job's number stands in the row once, and the line's number is the place of the line. */
function notTheJobs({ column }: TargetField): boolean {
  return column !== "job_number";
}

function fieldsOf(kind: TableKind, prefix: string): readonly TargetField[] {
  return Object.entries(rowSchemas[kind].shape).map(([column, cell]) => {
    const type = cell as z.ZodPipe; // every column of a row is text that a transform reads
    const told: Told = (type.in as z.ZodType).meta() ?? {};
    const words: readonly unknown[] = Array.isArray(told.enum) ? told.enum : [];
    return {
      target: `${prefix}${column}`,
      kind,
      column,
      sort: sortOf(told),
      needed: prefix === "" && type._zod.optin !== "optional",
      words: words.filter((word): word is string => typeof word === "string" && word !== ""),
      description: typeof told.description === "string" ? told.description : "",
    };
  });
}

/** What the schema of a cell publishes about it. */
type Told = Readonly<Record<string, unknown>>;

const sortsByPattern: ReadonlyMap<string | undefined, FieldSort> = new Map([
  [dayMonthOrYearCell.json.pattern, "made"],
  [amount.json.pattern, "money"],
  [decimalNumber.json.pattern, "number"],
  [catalogueKey.json.pattern, "key"],
  [catalogueKeys.json.pattern, "keys"],
  [identifier.json.pattern, "identifier"],
  [territory.json.pattern, "territory"],
  ["^\\d{1,7}$", "count"],
]);

/** The published description of a cell is made from what reads it, so it also says how to read a foreign cell. */
function sortOf({ format, pattern, enum: words }: Told): FieldSort {
  if (format === dayCell.json.format) return "day";
  if (format === instantCell.json.format) return "moment";
  if (Array.isArray(words))
    return words.filter((word) => word !== "").join() === yesNo.json.enum?.join() ? "yes or no" : "word";
  const plain = typeof pattern === "string" ? pattern.replace(/^\^\$\|/, "") : undefined;
  return (plain === undefined ? undefined : sortsByPattern.get(plain)) ?? "text";
}
