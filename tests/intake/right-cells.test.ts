import { expect, test } from "vitest";
import { z } from "zod";
import { rowSchemas, type TableKind, tableKinds } from "@/lib/intake/file-kinds";
import { jsonSchemaOf } from "@/lib/intake/json-schemas";
import { rightCells } from "@/lib/intake/right-cells";
import { minimalStandard } from "../minimal-standard";
import { odd } from "./matching/odd-cells";

const awkward = [
  "x".repeat(201),
  "x".repeat(20_001),
  "a\0b",
  "a\tb",
  " padded ",
  "\u00a0",
  "12.50",
  "2024-03",
  "US-CA",
];
const usual = ["2024-03-09", "P-100", "12", "drain_pump", "yes", "2024-03-09T14:05:00-08:00", "Some words"];

/** Rows that are mostly right: words of the column's own list, or usual cells; now and then an odd one, or none at all. */
function drawnRow(kind: TableKind, draw: () => number): Record<string, string> {
  const from = (words: readonly string[]) => words[Math.floor(draw() * words.length)] ?? "";
  const { properties = {} } = jsonSchemaOf(kind) as {
    properties?: Record<string, { enum?: string[]; examples: string[] }>;
  };
  const cells: Record<string, string> = {};
  for (const [column, { enum: words, examples }] of Object.entries(properties)) {
    const chance = draw();
    if (chance < 0.02) cells[column] = from([...odd, ...awkward]);
    else if (chance < 0.03) cells[column] = from(usual);
    else if (chance < 0.97) cells[column] = words === undefined ? (examples[0] ?? "") : from(words);
  }
  return cells;
}

test.each(tableKinds)("rows of %s are read as their schema reads them", (kind) => {
  const draw = minimalStandard(kind.length * 7919);
  const schema = rowSchemas[kind];
  const seen = { right: 0, wrong: 0 };
  for (let row = 0; row < 400; row++) {
    const cells = drawnRow(kind, draw);
    const expected = schema.safeParse(cells);
    expect(rightCells(schema, cells), JSON.stringify(cells)).toEqual(expected.data);
    seen[expected.success ? "right" : "wrong"]++;
  }
  expect(Math.min(seen.right, seen.wrong)).toBeGreaterThan(40);
});

test("a schema with a column that is read in another way is left to itself", () => {
  const mixed = rowSchemas.jobs.extend({ job_number: z.string().min(2) });
  expect(rightCells(mixed, { job_number: "J1", maker: "Hearth-Wick", completed_on: "2024-03-09" })).toBeUndefined();
});
