import { randomBytes } from "node:crypto";
import { sql } from "drizzle-orm";
import { Client } from "pg";
import { afterAll, beforeAll, expect, test } from "vitest";
import { checkLog } from "@/app/commands/nightly/check-log";
import { asActor } from "@/db/actor";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { checkChangeChain } from "@/db/queries/change-chain";
import { loadLastRuns } from "@/db/queries/program-runs";
import { findRowsNotAsLogged } from "@/db/queries/rows-not-as-logged";
import { editJob } from "@/db/writes/edit-job";
import { ownDatabaseUrl } from "../own-database";
import { csv, fileFolder, job, shopDocument, startAfresh, unit } from "./intake-files";

const files = fileFolder();
const owner = new Client({ connectionString: ownDatabaseUrl() });

beforeAll(async () => {
  await owner.connect();
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("A1"), unit("A2")]));
  await files.load(csv([job("J1", "A1"), job("J2", "A2")]));
});
afterAll(async () => {
  files.remove();
  await owner.end();
  await closeDatabase();
});

interface Entry extends Record<string, unknown> {
  readonly by: string;
  readonly tableName: string;
  readonly what: string;
  readonly rows: number;
}

const lastEntry = async (): Promise<number> =>
  (await owner.query("select coalesce(max(change_id), 0)::integer as last from change_log")).rows[0].last;
const entriesAfter = async (last: number): Promise<Entry[]> =>
  (
    await owner.query(
      `select by, table_name as "tableName", what, rows::integer as rows from change_log where change_id > $1 order by change_id`,
      [last],
    )
  ).rows;
const chain = (...heads: { link: number; sha256: string }[]) => readOnly((db) => checkChangeChain(db, heads));

/** What somebody can do who rules over the database: the guards are switched off for it and on again. */
async function past(statement: string, values: readonly unknown[] = []): Promise<void> {
  await owner.query("alter table change_log disable trigger user; alter table change_chain disable trigger user");
  await owner.query(statement, [...values]);
  await owner.query("alter table change_log enable trigger user; alter table change_chain enable trigger user");
}

test("a load of many rows is one entry; an edit by hand has its own, with who", async () => {
  const before = await lastEntry();
  await files.load(csv([job("J3", "A1", { completed_on: "2024-02-03", requested_on: "2024-02-01" }), job("J4", "A2")]));
  expect(await entriesAfter(before)).toEqual([{ by: "the program", tableName: "batches", what: "added", rows: 1 }]);
  const edited = await lastEntry();
  const edit = { jobNumber: "J3", column: "complaint", value: "It hums.", by: "Kim", reason: "Called again" } as const;
  await asActor("Kim at the desk", () => editJob(edit));
  expect(await entriesAfter(edited)).toEqual([
    { by: "Kim at the desk", tableName: "hand_edits", what: "added", rows: 1 },
  ]);
});

test("what a transaction did that was rolled back is not in the log", async () => {
  const before = await lastEntry();
  const failing = inTransaction(async (tx) => {
    await tx.execute(sql`insert into retention_limits values ('drafts', 10, 'Kim', now())`);
    throw new Error("no");
  });
  await expect(failing).rejects.toThrow("no");
  expect(await entriesAfter(before)).toEqual([]);
});

test("more than a hundred rows of one statement are one entry", async () => {
  const before = await lastEntry();
  await owner.query(`insert into payer_wordings (payer, words, reason, set_by, set_at)
    select 'Payer', 'words ' || n, 'other', 'Kim', now() from generate_series(1, 101) n`);
  await owner.query("update payer_wordings set set_by = 'Lee' where words in ('words 1', 'words 2')");
  expect(await entriesAfter(before)).toEqual([
    { by: "the program", tableName: "payer_wordings", what: "added", rows: 101 },
    { by: "Lee", tableName: "payer_wordings", what: "changed", rows: 1 },
    { by: "Lee", tableName: "payer_wordings", what: "changed", rows: 1 },
  ]);
});

test("fifty changes at once are links without a gap, each with a hash that another language computes alike", async () => {
  const before = await chain();
  const change = (n: number) =>
    inTransaction((tx) =>
      tx.execute(sql`insert into retention_limits values (${`kind ${n}`}, ${n + 1}, 'Kim', now())`),
    );
  await Promise.all(Array.from({ length: 50 }, (_, n) => change(n)));
  expect(await chain()).toMatchObject({ kind: "whole", links: ("links" in before ? before.links : 0) + 50 });
});

test.each([
  "update change_log set by = 'Mallory'",
  "delete from change_log",
  "truncate change_log cascade",
  "update change_chain set sha256 = ''",
  "delete from change_chain",
  "truncate change_chain",
])("“%s” is refused, to the owner of the database and to any other role", async (statement) => {
  await expect(owner.query(statement)).rejects.toThrow(/is only ever added to/);
  const role = `app_${randomBytes(4).toString("hex")}`;
  await owner.query(
    `create role ${role}; grant select, insert on change_log, change_chain to ${role}; set role ${role}`,
  );
  await expect(owner.query(statement)).rejects.toThrow(/permission denied/);
  await owner.query(`reset role; drop owned by ${role}; drop role ${role}`);
});

test("an entry that was altered past the guards is named by its link, and the first one of several", async () => {
  await past(
    "update change_log set by = by || 'x' where change_id in (select change_id from change_chain where link in (3, 5))",
  );
  expect(await chain()).toMatchObject({ kind: "broken", link: 3, sentence: expect.stringContaining("Link 3") });
  const { found, first } = await checkLog([]);
  expect([found > 0, first[0]]).toEqual([true, expect.stringMatching(/^Link 3, of 20.*not the one that was chained/)]);
  const [run] = await readOnly(loadLastRuns);
  expect(run).toMatchObject({ program: "check-log", problem: null, first: [expect.stringContaining("Link 3")] });
  await past(
    "update change_log set by = left(by, -1) where change_id in (select change_id from change_chain where link in (3, 5))",
  );
  expect(await chain()).toMatchObject({ kind: "whole" });
});

test("a link or an entry that was taken out is missed; the last one by what a backup noted", async () => {
  const [four] = (await owner.query("select * from change_chain where link = 4")).rows;
  await past("delete from change_chain where link = 4");
  expect(await chain()).toMatchObject({ kind: "broken", link: 4, sentence: "Link 4 is missing." });
  await past("insert into change_chain values ($1, $2, $3)", [4, four.change_id, four.sha256]);
  const whole = await chain();
  if (whole.kind !== "whole" || whole.head === undefined) throw new Error("a whole chain was expected");
  const [last] = (await owner.query("select * from change_chain order by link desc limit 1")).rows;
  const [entry] = (
    await owner.query("select to_jsonb(l) as row from change_log l where change_id = $1", [last.change_id])
  ).rows;
  await past(`with gone as (delete from change_chain where link = ${last.link} returning change_id) select from gone`);
  await past(`delete from change_log where change_id = ${last.change_id}`);
  expect(await chain()).toMatchObject({ kind: "whole" }); // nothing here can tell
  expect(await chain(whole.head)).toMatchObject({
    kind: "broken",
    sentence: expect.stringContaining("the last ones were removed"),
  });
  await past(
    "insert into change_log overriding system value select * from jsonb_populate_record(null::change_log, $1)",
    [entry.row],
  );
  await past("insert into change_chain values ($1, $2, $3)", [last.link, last.change_id, last.sha256]);
});

test("a chain that was written anew is whole in itself, and not the one that a backup noted", async () => {
  const whole = await chain();
  if (whole.kind !== "whole" || whole.head === undefined) throw new Error("a whole chain was expected");
  const rows = (await owner.query("select link, change_id, sha256 from change_chain order by link")).rows;
  await past("update change_log set by = 'Nobody' where change_id = $1", [rows[1].change_id]);
  await past(`do $$ declare c record; before text := ''; begin
    for c in select * from change_chain order by link loop
      update change_chain set sha256 = change_hash(c.link, before, (select l from change_log l where l.change_id = c.change_id)) where link = c.link returning sha256 into before;
    end loop; end $$`);
  expect(await chain()).toMatchObject({ kind: "whole" });
  expect(await chain(whole.head)).toMatchObject({ kind: "broken", sentence: expect.stringContaining("written anew") });
});

test("a history that was altered past its triggers is not as it was logged, and triggers that are off are told", async () => {
  expect(await readOnly(findRowsNotAsLogged)).toEqual([]);
  await owner.query("alter table hand_edits disable trigger user; update hand_edits set reason = 'Another'");
  expect(await readOnly(findRowsNotAsLogged)).toEqual([
    "hand_edits: its triggers were switched off, so changes of it are not logged or not refused.",
    expect.stringMatching(/^hand_edits \d+: is not as it was logged/),
  ]);
  await owner.query("update hand_edits set reason = 'Called again'; alter table hand_edits enable trigger user");
  await owner.query("alter table hand_edits add column later text default 'x'"); // a later schema
  expect(await readOnly(findRowsNotAsLogged)).toEqual([]);
  await owner.query("alter table hand_edits drop column later");
});

test("every table that says who did something is watched, drafts apart", async () => {
  const { rows } = await owner.query<{ name: string }>(`
    select distinct c.relname as name from pg_class c join pg_attribute a on a.attrelid = c.oid
    where c.relnamespace = 'public'::regnamespace and c.relkind = 'r' and c.relpersistence = 'p' and a.attname ~ '^(by|(set|saved|published|received|removed|entered|asked|decided|lifted)_by)$'
      and not exists (select from pg_trigger t where t.tgrelid = c.oid and t.tgname = 'log_added') order by 1`);
  expect(rows.map(({ name }) => name)).toEqual(["change_log", "policy_drafts", "sheet_drafts"]);
});
