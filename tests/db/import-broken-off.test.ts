import { Client } from "pg";
import { afterAll, beforeEach, expect, test } from "vitest";
import { closeDatabase } from "@/db/close-database";
import { ownDatabaseUrl } from "../own-database";
import { csv, fileFolder, shopDocument, startAfresh, unit } from "./intake-files";
import { stateOfData } from "./state-of-data";

const files = fileFolder();

beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const rows = Array.from({ length: 6000 }, (_, index) => unit(`S${index}`));

async function onServer<Row extends Record<string, unknown>>(statement: string): Promise<Row[]> {
  const client = new Client({ connectionString: ownDatabaseUrl(), application_name: "test" });
  await client.connect();
  try {
    return (await client.query<Row>(statement)).rows;
  } finally {
    await client.end();
  }
}

/**
 * Waits on the server for a session of the program that runs such a statement, and ends that session.
 * @param heldUp  a table that takes no rows meanwhile, where the statement would be over before anybody sees it
 */
function endSession(name: string, statement: string, heldUp?: string): Promise<unknown> {
  return onServer(`do $$ begin
    ${heldUp === undefined ? "" : `lock table ${heldUp} in share mode;`}
    for i in 1..20000 loop
      perform pg_stat_clear_snapshot();
      perform pg_terminate_backend(pid) from pg_stat_activity
        where datname = current_database() and application_name = '${name}' and query ~ '${statement}' and state = 'active';
      if found then return; end if;
      perform pg_sleep(0.001);
    end loop;
    raise exception 'no such statement came';
  end $$`);
}

test.each<[string, string, string?]>([
  ["ohmsworth copy", "copy .*staging_"],
  ["ohmsworth write", "set fate = f.fate"],
  ["ohmsworth write", "^insert into units"],
  ["ohmsworth write", "^insert into batch_made", "batch_made"],
])("a load whose session (%s) is ended at %s leaves nothing, and can be repeated", async (name, statement, heldUp) => {
  const before = await stateOfData();
  const [load] = await Promise.allSettled([files.load(csv(rows)), endSession(name, statement, heldUp)]);
  expect(load.status).toBe("rejected");
  expect(await stateOfData()).toEqual(before);
  expect(await files.load(csv(rows))).toMatchObject({ kind: "added", report: { rowsNew: rows.length } });
  expect(await onServer("select relname from pg_class where relname ~ '^staging_'")).toEqual([]);
});

test("what a load that died has left behind is removed by the next; what a living one uses is not", async () => {
  const site = new URL(process.env.DATABASE_URL ?? "").username;
  await onServer(
    `set role ${site}; create table staging.staging_4711 (row integer); create table staging.staging_4712 (row integer)`,
  );
  const living = new Client({ connectionString: ownDatabaseUrl() });
  await living.connect();
  await living.query("select pg_advisory_lock(7016021, 4712)");
  await files.load(csv(rows.slice(0, 2)), "dry run");
  expect(await onServer("select relname from pg_class where relname ~ '^staging_'")).toEqual([
    { relname: "staging_4712" },
  ]);
  await living.end();
  await files.load(csv(rows.slice(0, 2)), "dry run");
  expect(await onServer("select relname from pg_class where relname ~ '^staging_'")).toEqual([]);
});
