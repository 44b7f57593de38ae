import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

/**
 * Rows of a table in tests/reference, as text by column. Lines that begin with # say where the numbers come from;
 * the first other line names the columns. Columns are parted by tabs in a .tsv, by commas in a .csv.
 */
export function referenceTable(name: string): readonly Readonly<Record<string, string>>[] {
  const text = readFileSync(fileURLToPath(new URL(name, import.meta.url)), "utf8");
  const separator = name.endsWith(".tsv") ? "\t" : ",";
  const [heading, ...lines] = text.split(/\r?\n/).filter((line) => line !== "" && !line.startsWith("#"));
  const columns = (heading ?? "").split(separator);
  return lines.map((line) => {
    const cells = line.split(separator);
    return Object.fromEntries(columns.map((column, i) => [column, cells[i] ?? ""]));
  });
}

export interface NamedValue {
  readonly name: string;
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly value: number;
}

/** The values that one function has in distributions-from-r.csv (R) or tails.tsv (mpmath); fails if there are none. */
export function namedValues(file: "distributions-from-r.csv" | "tails.tsv", name: string): readonly NamedValue[] {
  const found = referenceTable(file).filter((row) => row.name === name);
  if (found.length === 0) throw new Error(`${file} has no ${name}`);
  return found.map((row) => ({ name, a: Number(row.a), b: Number(row.b), c: Number(row.c), value: Number(row.value) }));
}
