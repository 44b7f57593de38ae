// Files made to do harm, from a seed: whatever stands in a row, it must have one fate.
import { csvCell } from "@/synthetic-data/csv-file";
import type { Row } from "./intake-files";
import { exported } from "./table-files";

/** Small, fast and repeatable (mulberry32); good enough to choose dirt with. */
export function chances(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

const dirt = [
  "",
  " ",
  "\0",
  "a\0b",
  "\ufeff",
  "x\ufeffy",
  '"',
  'say "no"',
  "a\nb",
  "a\r\nb",
  "a\rb",
  "\u202eevil",
  "\ud800",
  "\\",
  "\\N",
  "\\u0000",
  "a\tb",
  "=1+1",
  "'; drop table jobs; --",
  "Total",
  "n/a",
  "8.12E+11",
  "1-MAR",
  "45717",
  "1/1/1900",
  "2/30/2024",
  "31/12/2024",
  "-5",
  "1.234,56",
  "$ 12.00",
  "9".repeat(400),
  "é½°Ω\u00a0",
  "__proto__",
  "😀".repeat(50),
];

export interface DirtyFile {
  readonly header: string;
  /** Rows as they are written in the file. */
  readonly lines: readonly string[];
  /** Rows below the header that hold any text. */
  readonly rows: number;
}

/** Rows of somebody's export: good ones, repeated and contradicting ones, and such with dirt in any cell, too few or too many. */
export function dirtyFile(seed: number, size: number): DirtyFile {
  const chance = chances(seed);
  const pick = <T>(from: readonly T[]): T => from[Math.floor(chance() * from.length)] as T; // the index is within the list
  const header = Object.keys(exported("", ""));
  const lines: string[] = [];
  let rows = 0;
  for (let index = 0; index < size; index++) {
    const cells = header.map((name) => String(rowOf(index)[name] ?? ""));
    if (chance() < 0.3)
      for (let times = 1 + Math.floor(chance() * 3); times > 0; times--)
        cells[Math.floor(chance() * header.length)] = pick(dirt);
    const kind = chance();
    const written =
      kind < 0.01
        ? header
        : kind < 0.02
          ? cells.slice(0, Math.floor(chance() * 5))
          : kind < 0.03
            ? [...cells, ...cells]
            : cells;
    const row = kind >= 0.03 && kind < 0.031 ? [...cells, ...Array.from({ length: 284 }, () => pick(dirt))] : written;
    if (kind > 0.999) row[14] = "long ".repeat(200_000);
    lines.push(row.map(csvCell).join(","));
    if (row.some((cell) => cell.trim() !== "")) rows++;
  }
  return { header: header.map(csvCell).join(","), lines, rows };

  function rowOf(index: number): Row {
    const number = `J${Math.floor(chance() * size * 0.7)}`;
    const line = {
      Part: `P-${Math.floor(chance() * 50)}`,
      Qty: 1 + Math.floor(chance() * 3),
      "Unit cost": (chance() * 90).toFixed(2),
    };
    return exported(number, chance() < 0.1 ? "" : `S${number}`, {
      ...(chance() < 0.6 ? line : {}),
      Note: chance() < 0.9 ? "Will not drain" : `Row ${index}`,
    });
  }
}
