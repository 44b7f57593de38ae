// What a distributed server asks of the schema, held against the schema as it is; and the calls that make it distributed,
// held against functions that only write down what they were asked. The engine itself is not here.
import { Client } from "pg";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { spreadTablesOver } from "@/db/distributed/spread-tables";
import { copiedTables, spreadTables } from "@/db/distributed/table-places";
import { migrateDatabase } from "@/db/migrate";
import { emptyDatabaseBeside } from "../database-server";
import { ownDatabaseUrl } from "../own-database";

let client: Client;
let url = "";
let drop = async () => {};

beforeAll(async () => {
  ({ url, drop } = await emptyDatabaseBeside(ownDatabaseUrl()));
  await migrateDatabase(url);
  client = new Client({ connectionString: url });
  await client.connect();
});
afterAll(async () => {
  await client.end();
  await drop();
});

const column = async (statement: string, values: readonly unknown[] = []): Promise<string[]> =>
  (await client.query<{ name: string }>(statement, [...values])).rows.map(({ name }) => name);

describe("the schema can be spread by unit_id", () => {
  test("every primary key, unique constraint and unique index of a spread table contains it", async () => {
    const without = await column(
      `select i.indexrelid::regclass::text as name from pg_index i
       where i.indisunique and i.indrelid::regclass::text = any($1) and not exists (
         select from pg_attribute a where a.attrelid = i.indrelid and a.attnum = any(i.indkey) and a.attname = 'unit_id')`,
      [[...spreadTables]],
    );
    expect(without).toEqual([]);
    const nullable = await column(
      "select attrelid::regclass::text as name from pg_attribute where attname = 'unit_id' and not attnotnull and attrelid::regclass::text = any($1)",
      [[...spreadTables]],
    );
    expect(nullable).toEqual([]);
  });

  test("references between spread tables pair unit_id with unit_id; only spread tables refer to them, and copies to copies", async () => {
    const wrong = await column(
      `select conname as name from pg_constraint c cross join lateral (select conrelid::regclass::text as at, confrelid::regclass::text as of) t
       where contype = 'f' and (
         t.of = any($1) and not (t.at = any($1) and exists (
           select from unnest(conkey, confkey) k (here, there)
           join pg_attribute h on h.attrelid = conrelid and h.attnum = k.here join pg_attribute o on o.attrelid = confrelid and o.attnum = k.there
           where h.attname = 'unit_id' and o.attname = 'unit_id'))
         or t.at = any($1) and not (t.of = any($1) or t.of = any($2)))`,
      [[...spreadTables], [...copiedTables]],
    );
    expect(wrong).toEqual([]);
  });

  test("a table whose key begins with unit_id is spread, and no other", async () => {
    const begins = await column(
      `select i.indrelid::regclass::text as name from pg_index i join pg_attribute a on a.attrelid = i.indrelid and a.attnum = i.indkey[0]
       where i.indisprimary and a.attname = 'unit_id' order by 1`,
    );
    const known: readonly string[] = spreadTables;
    expect(begins.filter((name) => !known.includes(name))).toEqual(["units_to_judge"]); // a queue, which takes locks
  });
});

test("a server without the extension is refused in a sentence", async () => {
  await expect(spreadTablesOver(url)).rejects.toThrow(
    /cannot spread tables: the extension citus is not in this database/,
  );
});

test("every table is given its form while no reference is on it, and all references come back", async () => {
  const links =
    "select conname || ' ' || pg_get_constraintdef(oid) as name from pg_constraint where contype = 'f' order by 1";
  const before = await column(links);
  await client.query(`
    create table public.pg_extension (extname text);
    insert into public.pg_extension values ('citus');
    create table pg_dist_partition (logicalrel regclass);
    create table asked (place serial, call text, links integer);
    create function note_call(call text, name text) returns void language sql as $$
      insert into asked (call, links) select call || ' ' || name, count(*) from pg_constraint where contype = 'f' and name::regclass in (conrelid, confrelid) $$;
    create function create_reference_table(name text) returns void language sql as $$ select note_call('copy', name) $$;
    create function create_distributed_table(name text, by text, colocate_with text default 'default') returns void language sql as $$ select note_call('spread by ' || by || ' with ' || colocate_with, name) $$;
    create function citus_get_active_worker_nodes() returns setof integer language sql as $$ select generate_series(1, 2) $$;
    alter database "${new URL(url).pathname.slice(1)}" set search_path = public, pg_catalog`);
  expect(await spreadTablesOver(url)).toEqual({ machines: 2 });
  expect(await column("select call as name from asked order by place")).toEqual([
    ...copiedTables.map((name) => `copy ${name}`),
    ...spreadTables.map((name) => `spread by unit_id with ${name === "units" ? "default" : "units"} ${name}`),
  ]);
  expect(await column("select call as name from asked where links > 0")).toEqual([]);
  expect(await column(links)).toEqual(before);
  const watched = await column(
    "select distinct tgrelid::regclass::text as name from pg_trigger where not tgisinternal",
  );
  expect(watched.filter((name) => [...spreadTables, ...copiedTables].some((table) => table === name))).toEqual([]);
  expect(watched).toContain("change_log");
});
