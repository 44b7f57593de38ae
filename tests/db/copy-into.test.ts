import { Client } from "pg";
import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { closeDatabase } from "@/db/close-database";
import { copyInto } from "@/db/copy-into";
import { copyLine } from "@/db/copy-line";
import { ownDatabaseUrl } from "../own-database";

const onlooker = new Client({ connectionString: ownDatabaseUrl() });
const target = { table: "staged rows", columns: ["row number", "cell"] };
const rows = async () => (await onlooker.query(`select * from "staged rows" order by 1`)).rows;

beforeAll(async () => {
  await onlooker.connect();
  await onlooker.query(
    `create unlogged table "staged rows" ("row number" int, cell text); grant all on "staged rows" to public`,
  );
});
beforeEach(() => onlooker.query(`truncate "staged rows"`));
afterAll(async () => {
  await closeDatabase();
  await onlooker.query(`drop table "staged rows"`);
  await onlooker.end();
});

test("every kind of text arrives as it was", async () => {
  const cells = [
    "plain",
    "",
    null,
    "\\N",
    "\\.",
    "tab\there",
    "two\nlines\r\n",
    "back\\slash",
    "½ Ω ≤ é 漢 🔧",
    "\u2028\u007f",
  ];
  await copyInto(
    target,
    cells.map((cell, index) => copyLine([index, cell])),
    { timeoutSeconds: 10 },
  );
  expect((await rows()).map(({ cell }) => cell)).toEqual(cells);
});

test("chunks may be cut anywhere, even inside a character", async () => {
  const bytes = Buffer.from(copyLine([1, "½ Ω"]) + copyLine([2, "second"]));
  const single = (function* () {
    for (const byte of bytes) yield Uint8Array.of(byte);
  })();
  await copyInto(target, single, { timeoutSeconds: 10 });
  expect(await rows()).toEqual([
    { "row number": 1, cell: "½ Ω" },
    { "row number": 2, cell: "second" },
  ]);
});

test("a row the database cannot take fails the whole at once, and the next copy works", async () => {
  const bad = copyInto(target, ["1\tgood\n", "two\tbad\n"], { timeoutSeconds: 10 });
  await expect(bad).rejects.toThrow("invalid input syntax for type integer: …");
  expect(await rows()).toEqual([]);
  await copyInto(target, ["1\tgood\n"], { timeoutSeconds: 10 });
  expect(await rows()).toHaveLength(1);
});

test("a copy into a missing table fails at once", async () => {
  await expect(copyInto({ table: "nowhere", columns: ["a"] }, ["1\n"], { timeoutSeconds: 10 })).rejects.toThrow(
    "does not exist",
  );
});

test("an error of the source is passed on and stores nothing", async () => {
  const source = (async function* () {
    yield copyLine([1, "good"]);
    throw new Error("the file could not be read further");
  })();
  await expect(copyInto(target, source, { timeoutSeconds: 10 })).rejects.toThrow("the file could not be read further");
  expect(await rows()).toEqual([]);
});

test("a copy that does not come to an end is given up at its limit and stores nothing", async () => {
  const source = (async function* () {
    yield copyLine([1, "good"]);
    await new Promise(() => {});
  })();
  await expect(copyInto(target, source, { timeoutSeconds: 1 })).rejects.toThrow("took longer than 1 s");
  expect(await rows()).toEqual([]);
});

test("a connection cut in the middle fails the copy and stores nothing", async () => {
  const source = (async function* () {
    yield copyLine([1, "good"]);
    await onlooker.query(
      "select pg_terminate_backend(pid) from pg_stat_activity where datname = current_database() and application_name = 'ohmsworth copy'",
    );
    for (let row = 2; row < 100_000; row++) yield copyLine([row, "x".repeat(100)]);
  })();
  await expect(copyInto(target, source, { timeoutSeconds: 20 })).rejects.toThrow();
  expect(await rows()).toEqual([]);
});

test("a NUL character is refused with its reason before it is sent", () => {
  expect(() => copyLine(["a\0b"])).toThrow(RangeError);
});
