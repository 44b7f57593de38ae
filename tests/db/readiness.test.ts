import { Client } from "pg";
import { afterAll, beforeAll, expect, test } from "vitest";
import { GET as alive } from "@/app/healthz/route";
import { GET as ready } from "@/app/readyz/route";
import { closeDatabase } from "@/db/close-database";
import { ownDatabaseUrl } from "../own-database";

const onlooker = new Client({ connectionString: ownDatabaseUrl() });
const last = "(select max(created_at) from drizzle.__drizzle_migrations)";

beforeAll(() => onlooker.connect());
afterAll(async () => {
  await onlooker.end();
  await closeDatabase();
});

test("ready with a database of this schema; behind by one step it is not, and still alive", async () => {
  const at = await ready();
  expect([at.status, await at.json()]).toEqual([200, { ready: true, database: true, schema: true, disk: true }]);
  const taken = await onlooker.query(
    `delete from drizzle.__drizzle_migrations where created_at = ${last} returning hash, created_at`,
  );
  const behind = await ready();
  expect([behind.status, behind.headers.get("retry-after")]).toEqual([503, "10"]);
  expect(await behind.json()).toEqual({ ready: false, database: true, schema: false, disk: true });
  expect(await alive().text()).toBe("alive\n");
  const { hash, created_at } = taken.rows[0];
  await onlooker.query("insert into drizzle.__drizzle_migrations (hash, created_at) values ($1, $2)", [
    hash,
    created_at,
  ]);
  expect((await ready()).status).toBe(200);
});

test("a database that is held up for longer than two seconds is told, not waited for", async () => {
  await onlooker.query("begin; lock table drizzle.__drizzle_migrations in access exclusive mode");
  try {
    const answer = await ready();
    expect([answer.status, await answer.json()]).toMatchObject([503, { database: false }]);
  } finally {
    await onlooker.query("rollback");
  }
  expect((await ready()).status).toBe(200);
});
