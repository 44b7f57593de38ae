import { sql } from "drizzle-orm";
import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { recount } from "@/db/writes/recount";
import { takeBack } from "@/db/writes/take-back";
import { batchOf, fileFolder, shopDocument, startAfresh } from "./intake-files";
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

const part = (number: string, quantity: number, cost: string) => ({ Part: number, Qty: quantity, "Unit cost": cost });
const lines = async () =>
  await readOnly((db) =>
    db.rows<{ job: string; line: number; part: string; quantity: number; cost: string }>(
      sql`select j.job_number as job, line, part_number as part, quantity, unit_cost_cents::text as cost from part_lines p join jobs j using (unit_id, job_id) order by 1, 2`,
    ),
  );

const orders = [
  exported("J1", "A1", part("P-200", 1, "41.50")),
  exported("J1", "A1", part("P-100", 2, "3.25")),
  exported("J2", "A2", part("P-100", 1, "3.25")),
  exported("J3", ""),
];

describe("one row a part line", () => {
  test("rows of one job are one job; its lines are numbered by what they say", async () => {
    expect(counts(await loadExport(files.folder, orders))).toEqual([4, 4, 0, 0, 0]);
    expect((await stateOfData()).jobs).toHaveLength(3);
    expect(await lines()).toEqual([
      { job: "J1", line: 1, part: "P-100", quantity: 2, cost: "325" },
      { job: "J1", line: 2, part: "P-200", quantity: 1, cost: "4150" },
      { job: "J2", line: 1, part: "P-100", quantity: 1, cost: "325" },
    ]);
    expect((await recount()).filter(({ differing }) => differing > 0)).toEqual([]);
  });

  test("the same rows in another order, or with a row twice, change nothing", async () => {
    await loadExport(files.folder, orders);
    const before = await stateOfData();
    expect(counts(await loadExport(files.folder, orders.toReversed()))).toEqual([4, 0, 0, 4, 0]);
    expect(counts(await loadExport(files.folder, [...orders, orders[1] ?? {}]))).toEqual([5, 0, 0, 5, 0]);
    expect(await stateOfData()).toEqual(before);
  });

  test("a further line of a job on file is added beside the others; one with another price is changed in its place", async () => {
    await loadExport(files.folder, orders);
    const more = [
      ...orders.slice(1),
      exported("J1", "A1", part("P-050", 1, "9.00")),
      exported("J1", "A1", part("P-200", 1, "44.00")),
    ];
    const result = await loadExport(files.folder, more);
    expect(counts(result)).toEqual([5, 0, 2, 3, 0]);
    expect((await lines()).map(({ job, line, part: number, cost }) => [job, line, number, cost])).toEqual([
      ["J1", 1, "P-100", "325"],
      ["J1", 2, "P-200", "4400"],
      ["J1", 3, "P-050", "900"],
      ["J2", 1, "P-100", "325"],
    ]);
    expect("report" in result && result.report.changes).toEqual([
      { row: 6, noun: "part line", name: "2", column: "unit_cost_cents", before: "4150", after: "4400" },
    ]);
  });

  test("two rows that tell one job differently are both held, each naming the other, with none of their lines", async () => {
    const result = await loadExport(files.folder, [
      exported("J1", "A1", part("P-1", 1, "1")),
      exported("J1", "A1", { ...part("P-2", 1, "2"), Done: "5/20/2023" }),
      exported("J2", "A2", part("P-1", 1, "1")),
    ]);
    expect(counts(result)).toEqual([3, 1, 0, 0, 2]);
    expect(problems(result)).toEqual([
      "2 Job # names the same job as row 3, with other values",
      "3 Job # names the same job as row 2, with other values",
    ]);
    expect(await lines()).toHaveLength(1);
  });

  test("two rows that write the same in two ways tell one job", async () => {
    const result = await loadExport(files.folder, [
      exported("J1", "A1", { ...part("P-1", 1, "1"), Trip: "35", Done: "5/14/2023" }),
      exported("J1", "A1", { ...part("P-2", 1, "2"), Trip: "35.00", Done: "05/14/2023" }),
    ]);
    expect(counts(result)).toEqual([2, 2, 0, 0, 0]);
    expect((await stateOfData()).jobs).toHaveLength(1);
    expect(await lines()).toHaveLength(2);
  });

  test("of two lines that say the same, rows that are equal word for word are one, and others two", async () => {
    const result = await loadExport(files.folder, [
      exported("J1", "A1", { ...part("P-1", 1, "1"), Colour: "white" }),
      exported("J1", "A1", { ...part("P-1", 1, "1"), Colour: "white" }),
      exported("J1", "A1", { ...part("P-1", 1, "1"), Colour: "black" }),
    ]);
    expect(counts(result)).toEqual([3, 2, 0, 1, 0]);
    expect(await lines()).toHaveLength(2);
  });

  test("a row whose part line is wrong is held whole; its job comes in by its other rows", async () => {
    const result = await loadExport(files.folder, [
      exported("J1", "A1", part("P-1", 1, "1")),
      exported("J1", "A1", part("P-2", 1, "many")),
      exported("J2", "A2", part("P-1", 1, "many")),
    ]);
    expect(counts(result)).toEqual([3, 1, 0, 0, 2]);
    expect((await stateOfData()).jobs).toHaveLength(1);
    expect("report" in result && result.report.problems.map(({ row, column, value }) => [row, column, value])).toEqual([
      [3, "Unit cost", "many"],
      [4, "Unit cost", "many"],
    ]);
  });
});

test("a totals row and a repeated header are refused, kept with their reasons, and counted", async () => {
  const header = Object.fromEntries(Object.keys(exported("", "")).map((name) => [name, name]));
  const total = Object.fromEntries(
    Object.keys(header).map((name) => [name, name === "Job #" ? "Total" : name === "Unit cost" ? "44.75" : ""]),
  );
  const result = await loadExport(files.folder, [orders[0] ?? {}, header, orders[2] ?? {}, total]);
  expect(counts(result)).toEqual([4, 2, 0, 0, 0, 2]);
  const kept = await readOnly((db) =>
    db.rows<{ row: number; state: string; reason: string }>(sql`select row, state, reason from held_rows order by row`),
  );
  expect(kept.map(({ row, state }) => [row, state])).toEqual([
    [3, "refused"],
    [5, "refused"],
  ]);
  expect("report" in result && result.report.refused).toEqual(kept.map(({ row, reason }) => ({ row, reason })));
});

test("taking it back leaves nothing of it", async () => {
  const before = await stateOfData();
  await takeBack(batchOf(await loadExport(files.folder, orders)));
  expect(await stateOfData()).toEqual(before);
});

test("a dry run gives the same counts and changes nothing", async () => {
  const before = await stateOfData();
  const dry = await loadExport(files.folder, orders, "dry run");
  expect(dry.kind).toBe("checked");
  expect(await stateOfData()).toEqual(before);
  const added = await loadExport(files.folder, orders);
  expect("report" in dry && "report" in added && added.report).toEqual("report" in dry && dry.report);
});
