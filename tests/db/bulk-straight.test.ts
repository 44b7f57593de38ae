// Large first files go straight into their tables. Whatever came of it must be what the ordinary way makes of the same
// rows; lone carriage returns make that one take the file, row by row.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { sql } from "drizzle-orm";
import { afterAll, beforeEach, expect, test, vi } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { KeyHash } from "@/db/writes/bulk/straight/key-hash";
import * as straight from "@/db/writes/bulk/straight/load-straight";
import { loadFile } from "@/db/writes/load-file";
import { recount } from "@/db/writes/recount";
import { takeBack } from "@/db/writes/take-back";
import { dirtyJob, drawer } from "./bulk-fuzz";
import { csv, fileFolder, job, type Row, shopDocument, startAfresh, today, unit } from "./intake-files";
import { counts } from "./load-outcome";
import { stateOfData } from "./state-of-data";

const files = fileFolder();
const way = vi.spyOn(straight, "loadStraight");
afterAll(async () => {
  files.remove();
  await closeDatabase();
});
beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  way.mockClear();
});

const load = (text: string, mode: "add" | "add and set aside" = "add and set aside") => {
  const path = join(files.folder, "straight.csv");
  writeFileSync(path, text);
  return loadFile({ path, fileName: "straight.csv", mode, today, straightFrom: 0 });
};
const ordinary = (text: string) => text.replaceAll("\r\n", "\r");

/** Whether the last file that could have gone straight did. */
const wentStraight = async () => (await way.mock.results.at(-1)?.value) !== undefined;

/** What the loads of these texts leave, and what taking them back leaves; a load that was begun anew has used up a number. */
async function outcome(texts: readonly string[]) {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  const results = [];
  for (const text of texts) results.push(await load(text));
  const asked = await wentStraight();
  const state = await stateOfData();
  const held = await readOnly((db) => db.rows(sql`select row, cells, problems from held_rows order by batch_id, row`));
  const wayBack = await readOnly((db) =>
    db.rows(
      sql`select distinct table_name, k.* from batch_made, unnest(first, second, third) as k(a, b, c) order by 1, 2, 3, 4`,
    ),
  );
  const batches = await readOnly((db) =>
    db.rows(sql`select kind, rows_total, rows_new, rows_held from batches order by batch_id`),
  );
  const differing = (await recount()).filter((each) => each.differing > 0);
  for (const result of results.toReversed()) if (result.kind === "added") await takeBack(result.batchId);
  const last = results.at(-1);
  const problems = last !== undefined && "report" in last ? last.report.problems : [];
  return {
    asked,
    seen: {
      counts: results.map(counts),
      state,
      held,
      wayBack,
      batches,
      differing,
      problems,
      after: await stateOfData(),
    },
  };
}

const washer = { product_type: "front_load_washer" };
const many = Array.from({ length: 40 }, (_, index) =>
  job(`J${index}`, index % 4 === 3 ? "" : `S-${index % 9}`, {
    ...washer,
    maker: ["Hearth-Wick", "HEARTH WICK", "Brightwell"][(index % 9) % 3] ?? "",
    component: index % 2 === 0 ? "drain_pump" : "",
    complaint: ['Says "bang"', "Two\nlines", "Ωhm ½\twide", "back\\slash"][index % 4] ?? "",
    labour: ["129.5", "0.05", "", "12"][index % 4] ?? "",
    visits: index % 3,
    first_visit_on: index % 5 === 0 ? "2023-05-02" : "",
    callback_of: index === 7 ? "J1" : "",
  }),
);
const unread = job("J99", "S9", { ...washer, completed_on: "2023-02-30" });

// One row is asked of the parser and cannot be read; a register knows two of the units; a model's kind is told by few rows.
const told = many.map((row, at) => ({ ...row, product_type: at % 20 < 9 ? "front_load_washer" : "" }));
const agreeing: readonly (readonly [string, readonly string[]])[] = [
  ["jobs with and without serials, one of which cannot be read", [csv([...told, unread])]],
  ["jobs of which a register knows some units", [csv([unit("S-0"), unit("S-3")]), csv(many)]],
];

test.each(agreeing)("%s leave what the ordinary way leaves", async (_, texts) => {
  const through = await outcome(texts);
  const other = await outcome(texts.map(ordinary));
  expect([through.asked, other.asked]).toEqual([true, false]);
  expect(through.seen).toEqual(other.seen);
  expect(through.seen.differing).toEqual([]);
});

const contradicting: readonly (readonly [string, Row])[] = [
  ["names a job that another names, with other values", { ...many[0], visits: 9 }],
  ["gives a serial to another model", job("J50", "S-0", { ...washer, model: "GX1" })],
  ["names a component that its kind lacks", job("J50", "S50", { ...washer, component: "compressor" })],
  ["gives a model another kind", job("J50", "S50", { product_type: "dishwasher" })],
];

test("jobs of which one contradicts another go the ordinary way, which says which; nothing of them is left", async () => {
  const before = await stateOfData();
  for (const [which, more] of contradicting) {
    const result = await load(csv([...many, more], Object.keys(many[0] ?? {})), "add");
    expect([which, result.kind, await wentStraight()]).toEqual([which, "refused", false]);
  }
  const result = await load(csv([...many, unread]), "add");
  expect([result.kind, counts(result), await wentStraight()]).toEqual(["refused", [41, 40, 0, 0, 1], true]);
  expect(await stateOfData()).toEqual(before);
});

test("keys are those that the database makes, of texts of every length", async () => {
  const texts = Array.from({ length: 60 }, (_, length) => "J-0Ω½|zyx".repeat(8).slice(0, length));
  const made = await readOnly((db) =>
    db.rows<{ key: string }>(sql`
      select (hashtextextended(t, 0) & 9223372036854775807)::text as key from jsonb_array_elements_text(${JSON.stringify(texts)}::jsonb) with ordinality as e(t, place) order by place`),
  );
  const hash = new KeyHash();
  const keys = texts.map((text) => {
    const bytes = Buffer.from(`x${text}`);
    hash.of(bytes, 1, bytes.length);
    return { key: ((BigInt(hash.high) << 32n) | BigInt(hash.low)).toString() };
  });
  expect(keys).toEqual(made);
});

test("a second file is held against the first, and the same bytes change nothing", async () => {
  await load(csv(many));
  expect((await load(csv(many))).kind).toBe("loaded before");
  expect(counts(await load(csv([...many.slice(0, 3), { ...many[4], job_number: "J77", serial: "S77" }])))).toEqual([
    4, 1, 0, 3, 0,
  ]);
  expect(await wentStraight()).toBe(false);
});

test("rows with every sort of damage come to the same", async () => {
  const draw = drawer(7);
  const text = csv(Array.from({ length: 60 }, (_, index) => dirtyJob(draw, index)));
  expect((await outcome([text])).seen).toEqual((await outcome([ordinary(text)])).seen);
});
