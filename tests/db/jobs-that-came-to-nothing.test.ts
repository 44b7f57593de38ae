import { sql } from "drizzle-orm";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { takeBack } from "@/db/writes/take-back";
import { batchOf, csv, fileFolder, job, shopDocument, startAfresh } from "./intake-files";
import { counts, problems } from "./load-outcome";
import { stateOfData } from "./state-of-data";
import { exported, loadExport, matching } from "./table-files";

const files = fileFolder();
beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const withStatus = {
  columns: matching.columns.map((column) => (column.source === "Colour" ? { ...column, target: "status" } : column)),
};
const part = { Part: "P-1", Qty: 1, "Unit cost": "9.00" };

const reasons = async () =>
  await readOnly((db) =>
    db.rows(sql`select cells ->> 'Job #' as job, state, reason from held_rows order by batch_id, row`),
  );

// Handbook F: voids are kept with money, and without a day of completion. They need no correction, and none is asked.
test("void jobs that were never completed are left out with their part lines, and counted", async () => {
  const rows = [
    exported("J1", "A1", { Colour: "closed", ...part }),
    exported("J2", "A2", { Colour: "void", Done: "", ...part }),
    exported("J3", "A3", { Colour: "cancelled", Done: "", Brand: "" }),
    exported("J4", "A4", { Colour: "void", ...part }),
    exported("J5", "A5", { Colour: "closed", Done: "" }),
  ];
  const result = await loadExport(files.folder, rows, "add and set aside", withStatus);
  expect(counts(result)).toEqual([5, 2, 0, 0, 1, 2]);
  expect(problems(result)).toEqual(["6 Done is blank"]);
  expect(await reasons()).toEqual([
    { job: "J2", state: "refused", reason: "Void and never completed: it counts as nothing." },
    { job: "J3", state: "refused", reason: "Cancelled and never completed: it counts as nothing." },
    { job: "J5", state: "held", reason: null },
  ]);
});

test("a later file that voids a job on file changes it, and it counts no longer; taken back, it does", async () => {
  const closed = exported("J1", "A1", { Colour: "closed", ...part });
  await loadExport(files.folder, [closed], "add and set aside", withStatus);
  const before = await stateOfData();
  const voided = await loadExport(
    files.folder,
    [{ ...closed, Colour: "void", Done: "" }],
    "add and set aside",
    withStatus,
  );
  expect(counts(voided)).toEqual([1, 0, 1, 0, 0]);
  const stored = await readOnly((db) =>
    db.rows(sql`select status, completed_on::text as completed, counted_as from jobs`),
  );
  expect(stored).toEqual([{ status: "void", completed: "2023-05-14", counted_as: "nothing" }]);
  await takeBack(batchOf(voided));
  expect(await stateOfData()).toEqual(before);
});

test("in a file of our own columns such a row is held, and told what to do", async () => {
  const typed = { product_type: "front_load_washer", status: "void" };
  const result = await files.load(
    csv([job("J1", "A1", { ...typed, completed_on: "" }), job("J2", "A1", typed)]),
    "dry run",
  );
  expect(problems(result)).toEqual(["2 completed_on is blank, and the row says that the job came to nothing"]);
});
