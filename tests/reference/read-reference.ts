import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect } from "vitest";

/** Rows of one file of tests/reference/data, as text by column. */
export function referenceRows(name: string): Readonly<Record<string, string>>[] {
  const [heading, ...lines] = textOf(`data/${name}.csv`).trim().split(/\r?\n/);
  const columns = (heading ?? "").split(",");
  return lines.map((line) => {
    const cells = line.split(",");
    return Object.fromEntries(columns.map((column, i) => [column, cells[i] ?? ""]));
  });
}

/** Values that R computed for one case and quantity (tests/reference/survival.R), by age, ascending; NaN where R has none. */
export function fromR(caseName: string, quantity: string): { readonly age: number; readonly value: number }[] {
  const found = rLines.filter((line) => line[0] === caseName && line[1] === quantity);
  if (found.length === 0) throw new Error(`survival-from-r.csv has no ${quantity} for ${caseName}`);
  return found.map((line) => ({ age: Number(line[2]), value: Number(line[3]) })).sort((a, b) => a.age - b.age);
}

/** The only value that R computed for this case and quantity. */
export function oneFromR(caseName: string, quantity: string): number {
  const values = fromR(caseName, quantity);
  if (values.length !== 1)
    throw new Error(`survival-from-r.csv has ${values.length} values of ${quantity} for ${caseName}`);
  return values[0]?.value ?? Number.NaN;
}

/** Fails unless the two agree to this fraction of the expected value. */
export function expectClose(got: number, expected: number, relative: number): void {
  expect(Math.abs(got - expected), `${got} for ${expected}`).toBeLessThanOrEqual(relative * Math.abs(expected));
}

interface PrintedCase {
  readonly id: string;
  readonly source: string;
  readonly expected: readonly {
    readonly quantity: string;
    readonly value: number;
    readonly tolerance: number;
    readonly how: string;
  }[];
}

/**
 * Compares results with one published worked example, to its printed digits. Every printed quantity must be given,
 * so that none is passed over in silence.
 */
export function expectPrinted(id: string, results: Readonly<Record<string, number>>): void {
  const printed = printedCases.find((one) => one.id === id);
  if (printed === undefined) throw new Error(`stat-cases.json has no case ${id}`);
  expect(Object.keys(results).sort()).toEqual(printed.expected.map((one) => one.quantity).sort());
  for (const { quantity, value, tolerance, how } of printed.expected) {
    const got = results[quantity] ?? Number.NaN;
    expect(Math.abs(got - value), `${id} ${quantity} (${how}): ${got} for ${value}`).toBeLessThanOrEqual(tolerance);
  }
}

function textOf(name: string): string {
  return readFileSync(fileURLToPath(new URL(name, import.meta.url)), "utf8");
}

const rLines = textOf("survival-from-r.csv")
  .split("\n")
  .slice(2)
  .map((line) => line.replaceAll('"', "").split(","));

// The file's shape is fixed by the reference folder; the tests fail loudly if it changes.
const printedCases = (JSON.parse(textOf("stat-cases.json")) as { cases: readonly PrintedCase[] }).cases;
