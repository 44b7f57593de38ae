import { mkdtempSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { inject } from "vitest";
import { type FormWishes, lookAtTable, type TableLook } from "@/lib/intake/tables/look-at-table";
import { readRows } from "@/lib/intake/tables/read-rows";
import type { SourceItem } from "@/lib/intake/tables/source-row";

/** Of this worker; it lies in the folder of the whole run. */
const folder = mkdtempSync(join(inject("temporaryFolder"), "tables-"));

let written = 0;

/** A file of its own with this content; its name says nothing. */
export function fileOf(content: string | Uint8Array, name = "file"): string {
  const path = join(folder, `${++written}-${name}`);
  writeFileSync(path, content);
  return path;
}

/** The look at a file that can be read. */
export async function lookAt(path: string, wishes?: FormWishes): Promise<TableLook> {
  const looked = await lookAtTable(path, wishes);
  if (!looked.ok) throw new Error(looked.problems.map(({ problem }) => problem).join(" "));
  return looked.look;
}

/** Everything below the header, by the form that the look has guessed. */
export async function itemsOf(path: string, wishes?: FormWishes): Promise<readonly SourceItem[]> {
  const items: SourceItem[] = [];
  for await (const item of readRows(path, (await lookAt(path, wishes)).form)) items.push(item);
  return items;
}

/** Cells of every row; the whole line where it could not be split. */
export async function cellsOf(path: string, wishes?: FormWishes): Promise<readonly (readonly string[] | string)[]> {
  return (await itemsOf(path, wishes)).map((item) => {
    if (item.kind === "row") return item.cells;
    return item.kind === "unread" ? item.raw : item.problem.problem;
  });
}

/** What is wrong with a file that cannot be read, as a person reads it. */
export async function refusalOf(path: string): Promise<string> {
  const looked = await lookAtTable(path);
  if (looked.ok) return "";
  return looked.problems.map(({ problem, fix }) => `${problem} ${fix}`).join(" ");
}

/** Whole numbers below `most`, from a seed. Knuth's multiplier, 64 bits; the high bits are used. */
export function seededNumbers(seed: number): (most: number) => number {
  let state = BigInt(seed) * 2_654_435_761n + 1n;
  return (most) => {
    state = BigInt.asUintN(64, state * 6_364_136_223_846_793_005n + 1_442_695_040_888_963_407n);
    return Number((state >> 33n) % BigInt(most));
  };
}
