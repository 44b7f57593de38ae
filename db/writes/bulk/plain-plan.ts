import { neededColumns, type TableKind } from "@/lib/intake/file-kinds";
import type { IntakeSetting } from "@/lib/intake/intake-setting";
import type { Cells } from "@/lib/intake/row-problems";
import type { StagedColumn, StagedKind } from "../staging/staged-kind";
import { binaryValue } from "./binary-value";
import type { PlainTest } from "./plain-cells";
import { plainColumns } from "./plain-columns";

/** How a plain row becomes one of the staging table. */
export interface PlainPlan {
  /** By cell of the file: what it must be where it is not blank, and whether it may be blank. */
  readonly tests: readonly (PlainTest | undefined)[];
  readonly needed: Uint8Array;
  /** Cells whose texts must ascend, blank ones apart. */
  readonly order: readonly number[];
  readonly apart: readonly (readonly [number, number])[];
  /** By staging column. */
  readonly writes: readonly PlainWrite[];
}

export interface PlainWrite {
  /** The cell; -1 where the file has no such column. */
  readonly cell: number;
  readonly form: "as it stands" | "normalised" | "cents" | "whole" | "day";
  /** What stands for a blank cell, in COPY's binary format. */
  readonly blank: Buffer;
}

/**
 * What a row of this file must be to need no parser. `sample` is one row: what blank cells stand for is asked of the
 * parser, by a row that has the needed cells only.
 */
export async function plainPlan(
  kind: StagedKind,
  setting: IntakeSetting,
  { columns, sample }: { columns: readonly string[]; sample: Cells },
): Promise<PlainPlan | undefined> {
  const plain = plainColumns(kind.kind, setting);
  if (plain === undefined) return undefined;
  const needed = [...neededColumns(kind.kind as TableKind), ...plain.asked]; // every kind that has plain columns is a table
  if (needed.some((column) => !columns.includes(column))) return undefined;
  const bare = Object.fromEntries(
    columns.map((column) => [column, needed.includes(column) ? (sample[column] ?? "") : ""]),
  );
  const read = await kind.read(bare, setting, ".");
  if (!read.ok) return undefined;
  const place = (column: string) => columns.indexOf(column);
  return {
    tests: columns.map((column) => plain.tests[column]),
    needed: Uint8Array.from(columns, (column) => Number(needed.includes(column))),
    order: plain.order.map(place).filter((cell) => cell >= 0),
    apart: plain.apart.map(([a, b]) => [place(a), place(b)] as const).filter(([a, b]) => a >= 0 && b >= 0),
    writes: kind.columns.map((column, index) => ({
      cell: place(column.from),
      form: formOf(column),
      blank: binaryValue(column.type, read.value[index]),
    })),
  };
}

function formOf({ name, type }: StagedColumn): PlainWrite["form"] {
  if (name.endsWith("_n") || name.endsWith("_normalised")) return "normalised";
  if (name.endsWith("_cents")) return "cents";
  return type === "date" ? "day" : type === "integer" ? "whole" : "as it stands";
}
