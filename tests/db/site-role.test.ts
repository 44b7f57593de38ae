// The site signs in to the database as somebody who can alter no table and not touch the change log. All tests of this
// folder run under that login; these hold what it must be refused, and how it comes about.
import { sql } from "drizzle-orm";
import { Client } from "pg";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { migrateDatabase } from "@/db/migrate";
import { loadTooManyRights } from "@/db/queries/too-many-rights";
import { grantAnew } from "@/db/site-role/grant-anew";
import { prepareSiteRole, type SiteLogin } from "@/db/site-role/prepare-site-role";
import { siteAddress } from "@/db/site-role/site-address";
import { tooManyRights } from "@/db/site-role/too-many-rights";
import { takeBack } from "@/db/writes/take-back";
import { emptyDatabaseBeside } from "../database-server";
import { asDatabaseOwner, ownDatabaseUrl } from "../own-database";
import { batchOf, csv, fileFolder, job, shopDocument, startAfresh, unit } from "./intake-files";

const files = fileFolder();
const site = new Client({ connectionString: process.env.DATABASE_URL });

beforeAll(async () => {
  await site.connect();
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("A1"), unit("A2")]));
});
afterAll(async () => {
  files.remove();
  await site.end();
  await closeDatabase();
});

test.each([
  "create table public.mine (n int)",
  "create table mine (n int)",
  "create schema mine",
  "create or replace function public.log_changes() returns trigger language plpgsql as 'begin return null; end'",
  "alter table jobs add column mine text",
  "alter table jobs disable trigger user",
  "alter table hand_edits disable trigger log_changed",
  "alter function log_changes() security invoker",
  "drop trigger log_added on batches",
  "drop table jobs",
  "truncate jobs cascade",
  "create index on jobs (complaint)",
  "insert into change_log (by, table_name, key, what, rows, width, row_sha256) values ('Mallory', 'jobs', '', 'added', 1, 1, '')",
  "update change_log set by = 'Mallory'",
  "delete from change_log",
  "truncate change_log cascade",
  "insert into change_chain values (0, 0, '')",
  "update change_chain set sha256 = ''",
  "delete from change_chain",
  "truncate change_chain",
  "select setval('change_log_change_id_seq', 1)",
  "select watch_changes('jobs')",
  "create table staging.mine (n int); create trigger mine after truncate on staging.mine execute function log_changes('1')",
  "delete from drizzle.__drizzle_migrations",
  "create role mine superuser",
  `set role "${new URL(ownDatabaseUrl()).username}"`,
  "set session_replication_role = replica",
  "copy jobs to program 'cat'",
])("“%s” is refused to the site", async (statement) => {
  await site.query("begin");
  try {
    await expect(site.query(statement)).rejects.toMatchObject({ code: "42501" }); // insufficient_privilege
  } finally {
    await site.query("rollback");
  }
});

test("it can tell where the server keeps its files, so that the room there is watched", async () => {
  expect((await site.query("select data_folder() as folder")).rows[0].folder).toMatch(/^\//);
});

test("what the site does is in the change log all the same, and a table of the same name before it changes nothing", async () => {
  const entries = async () => (await site.query("select count(*)::integer as n from change_log")).rows[0].n;
  const before = await entries();
  const batch = batchOf(await files.load(csv([job("J1", "A1"), job("J2", "A2")])));
  expect(await entries()).toBe(before + 1);
  expect(await takeBack(batch)).toMatchObject({ kind: "taken back" });
  expect(await entries()).toBeGreaterThan(before + 1);
  const then = await entries();
  await site.query(`begin; create temporary table change_log (like public.change_log); create temporary table change_chain (like public.change_chain);
    insert into retention_limits values ('pictures', 10, 'Kim', now()); commit`);
  const public_ = await site.query("select count(*)::integer as n from public.change_log");
  expect(public_.rows[0].n).toBe(then + 1);
});

test("the program itself signs in as the site, which may do no more than it must", async () => {
  const who = (db: Parameters<Parameters<typeof readOnly>[0]>[0]) => db.rows(sql`select current_user as login`);
  const login = siteAddress(ownDatabaseUrl()).role;
  expect(await readOnly(who)).toEqual([{ login }]);
  expect(await inTransaction(who)).toEqual([{ login }]);
  expect(await readOnly(loadTooManyRights)).toEqual([]);
});

/** A database of somebody who is no superuser, as a host gives it. */
async function ofAnOwner(rights: string, work: (url: string) => Promise<void>): Promise<void> {
  const database = await emptyDatabaseBeside(ownDatabaseUrl());
  const name = new URL(database.url).pathname.slice(1);
  const owner = new URL(database.url);
  owner.username = `${name}_owner`;
  owner.password = "pw:with/signs";
  await asDatabaseOwner(`create role ${owner.username} login ${rights} password 'pw:with/signs'`);
  await asDatabaseOwner(`alter database ${name} owner to ${owner.username}`);
  try {
    await migrateDatabase(owner.href);
    await work(owner.href);
  } finally {
    await database.drop();
    await asDatabaseOwner(`drop role ${owner.username}`);
  }
}

async function on<T>(url: string, work: (client: Client) => Promise<T>): Promise<T> {
  const client = new Client({ connectionString: url });
  await client.connect();
  return await work(client).finally(() => client.end());
}

const rightsOf = ({ url }: SiteLogin) =>
  on(url, (client) => tooManyRights(async (text) => (await client.query(text)).rows));

test("an owner who may make roles and is no superuser gives the site a login; twice is once, and new tables are reached", async () => {
  await ofAnOwner("createrole", async (url) => {
    const [first, second] = await Promise.all([prepareSiteRole(url), prepareSiteRole(url)]);
    expect(first).toEqual({ kind: "apart", url: siteAddress(url).url });
    expect(second).toEqual(first);
    expect(await rightsOf(first)).toEqual([]);
    await on(url, async (owner) => {
      await owner.query("create table later (n int)");
      await grantAnew(owner);
    });
    await on(first.url, (client) => client.query("insert into later values (1)"));
    await expect(on(first.url, (client) => client.query("drop table later"))).rejects.toThrow("must be owner");
  });
});

test("where the owner may make no roles, or the name is somebody else's, the site serves as the owner and says why", async () => {
  await ofAnOwner("", async (url) => {
    const login = await prepareSiteRole(url);
    expect(login).toMatchObject({
      kind: "owner",
      url,
      reason: expect.stringContaining("permission denied to create role"),
    });
    expect(await rightsOf(login)).toContain("owns the tables, so that it could alter or drop them");
    const { role } = siteAddress(url);
    await asDatabaseOwner(`create role ${role} login password 'theirs'`);
    expect(await prepareSiteRole(url)).toMatchObject({
      kind: "owner",
      reason: `the role ${role} is there already and is not Ohmsworth's`,
    });
  });
});
