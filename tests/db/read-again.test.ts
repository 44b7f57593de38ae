// Rows of somebody's file are staged without what stands in them. Those that turn out to be wrong get it by reading the file once more.
import { sql } from "drizzle-orm";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadRows } from "@/db/writes/load-rows";
import { matchedRows } from "@/db/writes/load-table";
import { translator } from "@/lib/intake/matching/translate-row";
import type { SourceItem } from "@/lib/intake/tables/source-row";
import { fileFolder, shopDocument, startAfresh, today } from "./intake-files";
import { counts } from "./load-outcome";
import { exported, loadExport, matching } from "./table-files";

const files = fileFolder();
afterAll(async () => {
  files.remove();
  await closeDatabase();
});
beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
});

const wrong = { Component: "oven_control" }; // not of a washer, which is known of the whole file only
const rows = [
  exported("J1", "A1"),
  exported("J2", "A2", { ...wrong, Note: "  “Loud”, then\nnothing " }),
  exported("J3", "A3"),
];
const held = () => readOnly((db) => db.rows(sql`select row, cells, source from held_rows order by row`));

test("a row that is held for what the file says elsewhere is kept as it stood, cell by cell", async () => {
  expect(counts(await loadExport(files.folder, rows))).toEqual([3, 2, 0, 0, 1]);
  const cells = Object.fromEntries(Object.entries(rows[1] ?? {}).map(([name, cell]) => [name, String(cell)]));
  expect(await held()).toEqual([{ row: 3, cells, source: { cells: Object.values(cells) } }]);
});

test("rows that are gone when they are read again end the load, and nothing of it stays", async () => {
  const matched = matchedRows(matching);
  let read = 0;
  async function* rowsOnce(): AsyncGenerator<SourceItem> {
    read++;
    for (const [place, row] of rows.entries())
      if (read === 1 || place === 0)
        yield { kind: "row", row: place + 2, cells: matched.header.map((name) => String(row[name] ?? "")) };
  }
  const load = loadRows(
    {
      ...matched,
      translatorOf: (setting) => translator(matching, matched.header, setting),
      file: { fileName: "export.csv", sha256: "0".repeat(64), bytes: 1 },
      mode: "add and set aside",
      today,
    },
    rowsOnce,
  );
  await expect(load).rejects.toThrow("The file has changed since it was read: 1 rows are gone.");
  expect(read).toBe(2);
  expect(await held()).toEqual([]);
  expect(await readOnly((db) => db.rows(sql`select from jobs`))).toEqual([]);
});
