import { sql } from "drizzle-orm";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { csv, fileFolder, shopDocument, startAfresh, unit } from "./intake-files";
import { counts, problems } from "./load-outcome";
import { exported, loadExport } from "./table-files";

const files = fileFolder();
beforeAll(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("HW0012345"), unit("HWS1B08", { model: "FW5500-A2" })]));
  await files.load(csv([{ part_number: "P-100", superseded_by: "P-101", list_price: "10.00", cost: "8.00" }]));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

// Handbook F: O/0, I/1, S/5, B/8; dropped suffixes; superseded numbers. Each is offered in the dry run and noted with
// the load; none is put in by itself.
test("numbers close to some on file are offered in the dry run, kept as notes, and stored as they stand", async () => {
  const part = (number: string) => ({ Part: number, Qty: 1, "Unit cost": "9.00" });
  const rows = [
    exported("J1", "HWOO12345"),
    exported("J2", "HW51808"),
    exported("J3", "A3", { Model: "FW5500-A" }),
    exported("J4", "HW0012345", part("p 100")),
    exported("J5", "HW0012345", part("P-102")),
  ];
  const dry = await loadExport(files.folder, rows, "dry run");
  expect(problems(dry)).toEqual([]);
  expect(
    "report" in dry && dry.report.offers?.map(({ row, column, value, offers }) => [row, column, value, offers]),
  ).toEqual([
    [2, "Ser #", "HWOO12345", ["HW0012345"]],
    [3, "Ser #", "HW51808", ["HWS1B08"]],
    [4, "Model", "FW5500-A", ["FW5500-A2"]],
    [5, "Part", "p 100", ["P-101"]],
  ]);
  expect(counts(await loadExport(files.folder, rows))).toEqual([5, 5, 0, 0, 0]);
  const stored = await readOnly((db) =>
    db.rows(sql`
      select serial, m.number as model, (select part_number from part_lines p where p.job_id = j.job_id) as part
      from jobs j join units using (unit_id) join models m using (model_id) order by job_number`),
  );
  expect(stored).toEqual([
    { serial: "HWOO12345", model: "FW5500", part: null },
    { serial: "HW51808", model: "FW5500", part: null },
    { serial: "A3", model: "FW5500-A", part: null },
    { serial: "HW0012345", model: "FW5500", part: "p 100" },
    { serial: "HW0012345", model: "FW5500", part: "P-102" },
  ]);
  const notes = await readOnly((db) =>
    db.rows<{ row: number }>(sql`select row from cell_notes where note like '%as it stands.' order by row`),
  );
  expect(notes.map(({ row }) => row)).toEqual([2, 3, 4, 5]);
});

test("a row that holds only a further part belongs to the job whose number it gives; without one it is held", async () => {
  const blank = {
    Brand: "",
    Model: "",
    Type: "",
    Called: "",
    Done: "",
    Component: "",
    Cause: "",
    Note: "",
    Colour: "",
  };
  const part = (number: string) => ({ Part: number, Qty: 2, "Unit cost": "3.10", Invoice: "I1" });
  const result = await loadExport(files.folder, [
    exported("J10", "A10", part("P-1")),
    exported("J10", "", { ...blank, ...part("P-2") }),
    exported("", "", { ...blank, ...part("P-3") }),
    exported("J99", "", { ...blank, ...part("P-4") }),
  ]);
  expect(counts(result)).toEqual([4, 2, 0, 0, 2]);
  expect(problems(result)).toEqual([
    "4 Job # is blank, and the row holds a part only: perhaps it continues the row above it, from cells that were merged",
    "5 Job # is not the number of a job on file",
  ]);
  const lines = await readOnly((db) =>
    db.rows(
      sql`select part_number as part from part_lines join jobs using (unit_id, job_id) where job_number = 'J10' order by 1`,
    ),
  );
  expect(lines).toEqual([{ part: "P-1" }, { part: "P-2" }]);
});
