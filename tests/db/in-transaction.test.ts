import { sql } from "drizzle-orm";
import { Client } from "pg";
import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { CommitUnknown } from "@/db/run-transaction";
import { ownDatabaseUrl } from "../own-database";

// A scratch table with its own second connection, which looks on and cuts the first one's connection.
const onlooker = new Client({ connectionString: ownDatabaseUrl() });

beforeAll(async () => {
  await onlooker.connect();
  await onlooker.query("create table scratch (name text primary key); grant all on scratch to public");
});
beforeEach(() => onlooker.query("truncate scratch"));
afterAll(async () => {
  await closeDatabase();
  await onlooker.query("drop table scratch");
  await onlooker.end();
});

const names = async () => (await onlooker.query("select name from scratch order by name")).rows.map((row) => row.name);
const insert = (name: string) => sql`insert into scratch values (${name})`;

test("all statements are stored together", async () => {
  const answer = await inTransaction(async (tx) => {
    await tx.execute(insert("a"));
    await tx.execute(insert("b"));
    return "done";
  });
  expect(answer).toBe("done");
  expect(await names()).toEqual(["a", "b"]);
});

test("an error thrown by the work stores nothing and reaches the caller unchanged", async () => {
  const reason = new Error("changed my mind");
  const outcome = inTransaction(async (tx) => {
    await tx.execute(insert("a"));
    throw reason;
  });
  await expect(outcome).rejects.toBe(reason);
  expect(await names()).toEqual([]);
});

test("an error of the database that the work keeps to itself still fails the whole", async () => {
  const outcome = inTransaction(async (tx) => {
    await tx.execute(insert("a"));
    await tx.execute(insert("a")).catch(() => {});
  });
  await expect(outcome).rejects.toThrow("Nothing was stored");
  expect(await names()).toEqual([]);
});

test("a savepoint may fail without the rest", async () => {
  await inTransaction(async (tx) => {
    await tx.execute(insert("a"));
    await tx.transaction((inner) => inner.execute(insert("a"))).catch(() => {});
    await tx.execute(insert("b"));
  });
  expect(await names()).toEqual(["a", "b"]);
});

test("a statement sent after the end is refused, not run outside the transaction", async () => {
  let late: Promise<unknown> = Promise.resolve();
  let release = () => {};
  const ended = new Promise<void>((resolve) => (release = resolve));
  await inTransaction(async (tx) => {
    await tx.execute(insert("a"));
    late = ended.then(() => tx.execute(insert("late")));
    late.catch(() => {});
  });
  release();
  await expect(late).rejects.toMatchObject({ cause: { message: expect.stringContaining("an await is missing") } });
  expect(await names()).toEqual(["a"]);
});

// The server ends the connection between any two statements, from right after BEGIN to right before COMMIT, while
// another transaction makes the pool open a new connection: the moment at which half a transaction can be stored.
test.each([0, 1, 2, 3])("a connection cut after %i of 3 statements stores none of them", async (cutAfter) => {
  const outcome = inTransaction(async (tx) => {
    const [backend] = await tx.rows<{ pid: number }>(sql`select pg_backend_pid() as pid`);
    for (let sent = 0; sent <= 3; sent++) {
      if (sent === cutAfter) {
        await cut(backend?.pid);
        await inTransaction((other) => other.execute(sql`select 1`));
      }
      if (sent < 3) await tx.execute(insert(`row ${sent}`)).catch(() => {}); // even work that goes on regardless
    }
  });
  await expect(outcome).rejects.toThrow();
  expect(await names()).toEqual([]);
  await inTransaction((tx) => tx.execute(insert("afterwards")));
  expect(await names()).toEqual(["afterwards"]);
});

test("a connection cut during the commit is reported as unknown, and all or nothing is there", async () => {
  await onlooker.query(`create or replace function wait_a_moment() returns trigger language plpgsql as
    $$ begin perform pg_sleep(5); return null; end $$`);
  await onlooker.query(`create constraint trigger slow_commit after insert on scratch
    deferrable initially deferred for each row execute function wait_a_moment()`);
  try {
    const outcome = inTransaction(async (tx) => {
      const [backend] = await tx.rows<{ pid: number }>(sql`select pg_backend_pid() as pid`);
      await tx.execute(insert("a"));
      await tx.execute(insert("b"));
      setTimeout(() => void cut(backend?.pid), 300);
    });
    await expect(outcome).rejects.toBeInstanceOf(CommitUnknown);
    expect([0, 2]).toContain((await names()).length);
  } finally {
    await onlooker.query("drop trigger slow_commit on scratch");
    await onlooker.query("drop function wait_a_moment");
  }
});

// Many writers whose connections are cut at random moments (seeded by position, not by chance): every batch is whole.
test("under a hail of cuts no batch of five is ever split, and every promise settles", async () => {
  const batches = Array.from({ length: 60 }, (_, batch) =>
    inTransaction(async (tx) => {
      for (let row = 0; row < 5; row++) await tx.execute(insert(`${batch}-${row}`));
    }).then(
      () => batch,
      () => undefined,
    ),
  );
  let going = true;
  const hail = (async () => {
    while (going) {
      await onlooker.query(`select pg_terminate_backend(pid) from pg_stat_activity
        where datname = current_database() and application_name = 'ohmsworth write' and xact_start is not null order by md5(pid::text) limit 1`);
      await new Promise((resolve) => setTimeout(resolve, 8));
    }
  })();
  const stored = (await Promise.all(batches)).filter((batch) => batch !== undefined);
  going = false;
  await hail;
  expect(stored.length).toBeGreaterThan(0);
  expect(stored.length).toBeLessThan(batches.length);
  const { rows } = await onlooker.query(
    "select split_part(name, '-', 1)::int as batch, count(*)::int as n from scratch group by 1",
  );
  expect(rows.filter(({ n }) => n !== 5)).toEqual([]);
  const found = new Set(rows.map(({ batch }) => batch));
  expect(stored.filter((batch) => !found.has(batch))).toEqual([]);
});

test("a change reports after it is on disk", async () => {
  const settings = await inTransaction((tx) =>
    tx.rows<{ fsync: string; commit: string; pages: string }>(
      sql`select current_setting('fsync') as fsync, current_setting('synchronous_commit') as commit, current_setting('full_page_writes') as pages`,
    ),
  );
  expect(settings).toEqual([{ fsync: "on", commit: "on", pages: "on" }]);
});

test("whole numbers of eight bytes, days and instants come back as the same text from a read and from a change", async () => {
  const statement = sql`select 9007199254740993::bigint as big, date '2024-02-29' as day, timestamptz '2024-02-29 23:30:00-05' as instant, 12.340::numeric as exact`;
  const expected = [{ big: "9007199254740993", day: "2024-02-29", instant: "2024-03-01 04:30:00+00", exact: "12.340" }];
  expect(await readOnly((db) => db.rows(statement))).toEqual(expected);
  expect(await inTransaction((tx) => tx.rows(statement))).toEqual(expected);
});

async function cut(pid: number | undefined): Promise<void> {
  await onlooker.query("select pg_terminate_backend($1, 2000)", [pid]);
}
