import { sql } from "drizzle-orm";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { takeBack } from "@/db/writes/take-back";
import { batchOf, csv, fileFolder, job, partLine, shopDocument, startAfresh } from "./intake-files";
import { counts, problems } from "./load-outcome";
import { stateOfData } from "./state-of-data";
import { exported, loadExport } from "./table-files";

const files = fileFolder();
beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const line = (part: string, quantity: number | string, cost = "9.00") => ({
  Part: part,
  Qty: quantity,
  "Unit cost": cost,
});
const stored = async () =>
  await readOnly((db) =>
    db.rows(
      sql`select job_number as job, part_number as part, quantity from part_lines join jobs using (unit_id, job_id) order by 1, 2`,
    ),
  );

const rows = [
  exported("J1", "A1", line("P-1", 3)),
  exported("J1", "A1", line("P-1", -1)),
  exported("J1", "A1", line("P-2", 1)),
  exported("J2", "A2", line("P-3", 1)),
  exported("J2", "A2", line("P-3", "(1)")),
];

test("a return is set against the line that it takes back, whatever the order and however often", async () => {
  const before = await stateOfData();
  const first = await loadExport(files.folder, rows);
  expect(counts(first)).toEqual([5, 3, 0, 2, 0]);
  expect(await stored()).toEqual([
    { job: "J1", part: "P-1", quantity: 2 },
    { job: "J1", part: "P-2", quantity: 1 },
  ]);
  const notes = await readOnly((db) =>
    db.rows(sql`select row, raw, taken, note from cell_notes where "column" = 'quantity' order by row`),
  );
  expect(notes).toEqual([
    { row: 2, raw: "3", taken: "2", note: "1 of 3 returned, by row 3." },
    { row: 3, raw: "-1", taken: "", note: "Returned: taken off the line of this part in row 2." },
    { row: 5, raw: "1", taken: "0", note: "1 of 1 returned, by row 6." },
    { row: 6, raw: "-1", taken: "", note: "Returned: taken off the line of this part in row 5." },
  ]);
  expect(counts(await loadExport(files.folder, rows.toReversed())).slice(1, 3)).toEqual([0, 0]);
  await takeBack(batchOf(first));
  await takeBack(batchOf(first) + 1);
  expect(await stateOfData()).toEqual(before);
});

test("a return in a later file changes the line that is on file", async () => {
  await loadExport(files.folder, [exported("J1", "A1", line("P-1", 3))]);
  expect(counts(await loadExport(files.folder, rows.slice(0, 2)))).toEqual([2, 0, 1, 1, 0]);
  expect(await stored()).toEqual([{ job: "J1", part: "P-1", quantity: 2 }]);
});

test("a return that cannot be set against one line is held, with what to do", async () => {
  await loadExport(files.folder, [exported("J4", "A4", line("P-4", 1))]);
  const result = await loadExport(files.folder, [
    exported("J1", "A1", line("P-1", -1)),
    exported("J2", "A2", line("P-2", 1)),
    exported("J2", "A2", line("P-2", -2)),
    exported("J3", "A3", { ...line("P-3", 1), Invoice: "I1" }),
    exported("J3", "A3", { ...line("P-3", 1), Invoice: "I2" }),
    exported("J3", "A3", line("P-3", -1)),
    exported("J4", "A4", line("P-4", 1)),
    exported("J4", "A4", line("P-4", -1)),
  ]);
  expect(problems(result)).toEqual([
    "2 Qty takes back a part of which this file has no line at this cost",
    "4 Qty takes back more than the 1 of row 3",
    "7 Qty takes back a part of which the job has several lines at this cost",
    "9 Qty takes back all of row 8, and that line is on file already",
  ]);
});

test("in a file of our own columns it is the same", async () => {
  await files.load(csv([job("J1", "A1", { product_type: "front_load_washer" })]));
  const result = await files.load(csv([partLine("J1", 1, { quantity: 2 }), partLine("J1", 2, { quantity: -1 })]));
  expect(counts(result)).toEqual([2, 1, 0, 1, 0]);
  expect(await stored()).toEqual([{ job: "J1", part: "P-100", quantity: 1 }]);
});
