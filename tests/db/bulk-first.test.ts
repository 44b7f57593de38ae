// A file of our own columns while nothing is on file: rows that all agree are stored at once. Whatever came of it must be
// what the ordinary way makes of the same rows; their line ends make it take every row by itself.
import { sql } from "drizzle-orm";
import { afterAll, afterEach, beforeEach, expect, test, vi } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { firstJobs } from "@/db/writes/bulk/first-jobs";
import { firstPartLines } from "@/db/writes/bulk/first-part-lines";
import { takeBack } from "@/db/writes/take-back";
import { csv, fileFolder, job, partLine, type Row, shopDocument, startAfresh, unit } from "./intake-files";
import { counts } from "./load-outcome";
import { stateOfData } from "./state-of-data";

const files = fileFolder();
const stored = { jobs: vi.spyOn(firstJobs, "store"), lines: vi.spyOn(firstPartLines, "store") };
afterAll(async () => {
  files.remove();
  await closeDatabase();
});
beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
});
afterEach(() => {
  for (const spy of Object.values(stored)) spy.mockClear();
});

const washer = { product_type: "front_load_washer", sold_on: "", made: "" };
const many = Array.from({ length: 12 }, (_, index) =>
  job(`J${index}`, index % 4 === 3 ? "" : `S${index % 5}`, {
    ...washer,
    component: index % 2 === 0 ? "drain_pump" : "",
  }),
);
const lines = many.flatMap(({ job_number: number }, index) => [
  partLine(String(number), 1),
  ...(index % 3 === 0 ? [partLine(String(number), 2, { part_number: "P-7", component: "" })] : []),
]);
const withoutFacts = Object.keys(many[0] ?? {}).filter((column) => !["sold_on", "made"].includes(column));
const register = csv([unit("S0"), unit("S1", { installed_on: "2022-05-01" })]);

/** What the loads of these texts leave, and what taking them back leaves. */
async function outcome(texts: readonly string[]) {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  const results = [];
  for (const text of texts) results.push(await files.load(text, "add and set aside"));
  const state = await stateOfData();
  const held = await readOnly((db) => db.rows(sql`select row, cells, problems from held_rows order by batch_id, row`));
  const notes = await readOnly((db) => db.rows(sql`select row, "column", note from cell_notes order by 1, 2, 3`));
  const wayBack = await readOnly((db) =>
    db.rows(
      sql`select distinct batch_id, table_name, k.* from batch_made, unnest(first, second, third) as k order by 1, 2, 3, 4, 5`,
    ),
  );
  for (const result of results.toReversed()) if (result.kind === "added") await takeBack(result.batchId);
  return { counts: results.map(counts), state, held, notes, wayBack, after: await stateOfData() };
}

const ordinary = (text: string) => text.replaceAll("\r\n", "\r");

const agreeing: readonly (readonly [string, readonly string[]])[] = [
  ["jobs with and without serials", [csv(many)]],
  ["jobs of which a register knows some units", [register, csv(many, withoutFacts)]],
  [
    "jobs whose rows tell of their units",
    [csv(many.map((row) => ({ ...row, sold_on: "2022-02-02", made: "2022-01" })))],
  ],
  ["jobs of which one cannot be read", [csv([...many, job("J99", "S9", { ...washer, completed_on: "2023-02-30" })])]],
  [
    "jobs that tell the kind of their model once",
    [csv(many.map((row, at) => ({ ...row, product_type: at === 5 ? "front_load_washer" : "" })))],
  ],
];

test.each(agreeing)("%s are stored at once", async (_, texts) => {
  const atOnce = await outcome(texts);
  expect(stored.jobs).toHaveBeenCalledTimes(1);
  expect(atOnce).toEqual(await outcome(texts.map(ordinary)));
  expect(stored.jobs).toHaveBeenCalledTimes(1);
});

test("part lines are stored at once, also beside one that cannot be read", async () => {
  for (const more of [[], [partLine("J1", 9, { quantity: "many" })]]) {
    stored.lines.mockClear();
    const texts = [csv(many), csv([...lines, ...more])];
    const atOnce = await outcome(texts);
    expect(stored.lines).toHaveBeenCalledTimes(1);
    expect(atOnce).toEqual(await outcome(texts.map(ordinary)));
  }
});

const one = (more: Row) => ({ ...job("J50", "S50", washer), ...more });
const contradicting: readonly (readonly [string, readonly Row[]])[] = [
  ["repeats another", [many[0] ?? {}]],
  ["names a job that another names, with other values", [{ ...many[0], visits: 3 }]],
  ["gives a serial to another model", [one({ serial: "S0", model: "GX1" })]],
  ["gives the model of a serial with its suffix", [one({ serial: "S0", model: "FW5500-A2" })]],
  ["names a component that its kind lacks", [one({ component: "compressor" })]],
  ["gives a model another kind", [one({ product_type: "dishwasher" })]],
  ["names a model without its kind", [one({ model: "ZZ900", product_type: "" })]],
  ["came to nothing", [one({ status: "void", completed_on: "" })]],
];

// What the ordinary way makes of such rows is held to the parser's in bulk.test.ts.
test.each(contradicting)("jobs of which one %s go the ordinary way", async (_, more) => {
  const rows = [...many, ...more];
  await files.load(csv(rows, Object.keys({ ...many[0], ...more[0] })), "dry run");
  const result = await files.load(csv(rows, Object.keys({ ...many[0], ...more[0] })), "add and set aside");
  expect(counts(result)[0]).toBe(rows.length);
  expect(stored.jobs).not.toHaveBeenCalled();
});

test.each([
  ["is of no job on file", [partLine("J500", 1)], 1],
  ["is told twice, and differently", [partLine("J1", 1, { quantity: 2 })], 2],
  ["names a component that its appliance lacks", [partLine("J1", 3, { component: "compressor" })], 1],
  ["takes another back", [partLine("J1", 4, { quantity: -1 })], 0],
] as const)("part lines of which one %s go the ordinary way", async (_, more, held) => {
  await files.load(csv(many));
  const result = await files.load(csv([...lines, ...more]), "add and set aside");
  expect([counts(result)[0], counts(result)[4]]).toEqual([lines.length + 1, held]);
  expect(stored.lines).not.toHaveBeenCalled();
});

test("jobs that may fill blanks of units on file go the ordinary way", async () => {
  await files.load(register);
  const result = await files.load(csv(many.map((row) => ({ ...row, sold_on: "2022-02-02" }))));
  expect(counts(result)).toEqual([many.length, many.length, 0, 0, 0]);
  expect(stored.jobs).not.toHaveBeenCalled();
});

test("a second file is held against the first", async () => {
  await files.load(csv(many));
  expect(counts(await files.load(csv([...many.slice(0, 3), one({})])))).toEqual([4, 1, 0, 3, 0]);
  expect(stored.jobs).toHaveBeenCalledTimes(1);
});
