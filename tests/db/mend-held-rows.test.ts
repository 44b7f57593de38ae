import { sql } from "drizzle-orm";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { mendHeldRows } from "@/db/writes/mend-held-rows";
import { takeBack } from "@/db/writes/take-back";
import { batchOf, csv, fileFolder, shopDocument, startAfresh, today, unit } from "./intake-files";
import { counts } from "./load-outcome";
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

const heldStates = async () =>
  await readOnly((db) =>
    db.rows<{ row: number; state: string; corrections: Record<string, string>; by: number | null }>(
      sql`select row, state, corrections, mended_by::integer as by from held_rows order by batch_id, row`,
    ),
  );

/** Rows 3 to 5 name a component that nobody knows, row 5 also a day that is none. */
const dirty = [
  exported("J1", "A1"),
  exported("J2", "A2", { Component: "pmp" }),
  exported("J3", "A3", { Component: "pmp" }),
  exported("J4", "A4", { Component: "pmp", Done: "2/30/2024" }),
];
const alike = async (batchId: number) => {
  const [first] = await readOnly((db) =>
    db.rows<{ problem: { column: string; value: string; problem: string } }>(
      sql`select problems -> 0 as problem from held_rows where batch_id = ${batchId} order by row limit 1`,
    ),
  );
  if (first === undefined) throw new Error("Nothing is held.");
  const { column, value, problem } = first.problem;
  return { alike: { column, value, problem }, column, value: "pump" };
};

test("all alike are corrected at once; what is still wrong waits with its correction, and is mended later", async () => {
  const batch = batchOf(await loadExport(files.folder, dirty));
  const change = await alike(batch);
  const request = { batchId: batch, today, changes: [change] } as const;
  const before = await stateOfData();
  const dry = await mendHeldRows({ ...request, mode: "dry run" });
  expect("report" in dry && counts(dry)).toEqual([3, 2, 0, 0, 1]);
  expect(await stateOfData()).toEqual(before);

  const first = await mendHeldRows({ ...request, mode: "add" });
  if (first.kind !== "added") throw new Error(JSON.stringify(first));
  expect(await heldStates()).toEqual([
    { row: 3, state: "mended", corrections: { Component: "pump" }, by: first.batchId },
    { row: 4, state: "mended", corrections: { Component: "pump" }, by: first.batchId },
    { row: 5, state: "held", corrections: { Component: "pump" }, by: null },
  ]);
  const second = await mendHeldRows({
    batchId: batch,
    today,
    changes: [{ rows: [5], column: "Done", value: "5/20/2023" }],
    mode: "add",
  });
  if (second.kind !== "added") throw new Error(JSON.stringify(second));
  expect((await stateOfData()).jobs).toHaveLength(4);

  expect(await takeBack(second.batchId)).toMatchObject({
    removed: [
      { noun: "unit", rows: 1 },
      { noun: "job", rows: 1 },
    ],
  });
  expect((await heldStates())[2]).toMatchObject({ state: "held", by: null });
  expect(await takeBack(batch)).toMatchObject({ followUps: [{ batchId: first.batchId, rows: 2 }] });
  expect((await stateOfData()).jobs).toHaveLength(2);
  expect((await mendHeldRows({ ...request, changes: [], mode: "add" })).kind).toBe("taken back");
});

test("a mended file in whole is what the right file makes", async () => {
  await loadExport(
    files.folder,
    dirty.map((row) => ({ ...row, Component: "pump", Done: "5/14/2023" })),
  );
  const expected = await stateOfData();
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  const batch = batchOf(await loadExport(files.folder, dirty));
  const changes = [await alike(batch), { rows: [5], column: "Done", value: "5/14/2023" }];
  const mended = await mendHeldRows({ batchId: batch, today, changes, mode: "add" });
  expect(mended.kind).toBe("added");
  expect(await stateOfData()).toEqual(expected);
});

test("a column that the file does not have can be filled for a row", async () => {
  const batch = batchOf(await loadExport(files.folder, [exported("J1", "A1"), exported("J2", "A2", { Brand: "" })]));
  expect(
    (await mendHeldRows({ batchId: batch, today, changes: [{ rows: [9], column: "maker", value: "x" }], mode: "add" }))
      .kind,
  ).toBe("nothing held");
  const changes = [
    { rows: [3], column: "Brand", value: "Hearth-Wick" },
    { rows: [3], column: "technician", value: "T7" },
  ];
  expect(await mendHeldRows({ batchId: batch, today, changes, mode: "add" })).toMatchObject({ kind: "added" });
  expect((await stateOfData()).jobs?.filter((row) => row.includes('"technician": "T7"'))).toHaveLength(1);
});

test("held rows of a file in our own columns are mended the same way", async () => {
  const batch = batchOf(
    await files.load(csv([unit("A1"), unit("A2", { installed_on: "2023-02-30" })]), "add and set aside"),
  );
  const mended = await mendHeldRows({
    batchId: batch,
    today,
    changes: [{ rows: [3], column: "installed_on", value: "2023-02-28" }],
    mode: "add",
  });
  expect(mended).toMatchObject({ kind: "added", report: { rowsNew: 1 } });
  expect((await stateOfData()).units).toHaveLength(2);
  expect(await mendHeldRows({ batchId: batch, today, changes: [], mode: "add" })).toEqual({ kind: "nothing held" });
});
