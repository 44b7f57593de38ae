// The schema is brought up from the first release while somebody reads and somebody writes, as the release before does
// until it is stopped. UPGRADE_JOBS says how many jobs; `npm run soak -- upgrade` takes 100,000.
import { setTimeout as pause } from "node:timers/promises";
import { Client } from "pg";
import { expect, test } from "vitest";
import { brokenPromises } from "@/db/backup/broken-promises";
import { withStepsUpTo } from "@/db/backup/schema-steps";
import { migrateDatabase } from "@/db/migrate";
import { emptyDatabaseBeside } from "../database-server";
import { ownDatabaseUrl } from "../own-database";
import { fillFirstSchema, oldInsert, oldRead } from "./first-schema-company";

const jobs = Number(process.env.UPGRADE_JOBS ?? 3000);
/** Nobody may wait longer for a lock. */
const longestMs = 2000;

interface Worked {
  done: number;
  longest: number;
}

test(`from the first schema with ${jobs} jobs, nobody waits over ${longestMs / 1000} s and every row is there`, {
  timeout: 600_000,
}, async () => {
  const { url, drop } = await emptyDatabaseBeside(ownDatabaseUrl());
  const clients = [
    new Client({ connectionString: url }),
    new Client({ connectionString: url }),
    new Client({ connectionString: url }),
  ];
  const [owner, reader, writer] = clients as [Client, Client, Client]; // three were made above
  try {
    await withStepsUpTo("0000_first_schema", (steps) => migrateDatabase(url, steps));
    for (const client of clients) await client.connect();
    await fillFirstSchema(owner, jobs);
    const before = await sums(owner);
    const stop = new AbortController();
    const at = stop.signal;
    const reading = repeat(at, () => reader.query(oldRead));
    const writing = repeat(at, (n) => writer.query(oldInsert, [n]));
    await pause(200);
    const start = performance.now();
    await migrateDatabase(url);
    const took = performance.now() - start;
    await pause(200);
    stop.abort();
    const [read, written] = await Promise.all([reading, writing]);
    console.log(
      `${jobs} jobs: migrated in ${Math.round(took)} ms; longest wait of ${read.done} reads ${Math.round(read.longest)} ms, of ${written.done} writes ${Math.round(written.longest)} ms`,
    );
    expect(Math.max(read.longest, written.longest)).toBeLessThan(longestMs);
    expect(read.done).toBeGreaterThan(5);
    expect(written.done).toBeGreaterThan(5);
    const after = await sums(owner);
    expect(after).toEqual({ ...before, jobs: before.jobs + written.done });
    expect(await brokenPromises(owner)).toEqual([]);
  } finally {
    for (const client of clients) await client.end().catch(() => {});
    await drop();
  }
});

async function repeat(until: AbortSignal, work: (n: number) => Promise<unknown>): Promise<Worked> {
  const worked: Worked = { done: 0, longest: 0 };
  while (!until.aborted) {
    const start = performance.now();
    await work(worked.done);
    worked.longest = Math.max(worked.longest, performance.now() - start);
    worked.done += 1;
    await pause(5);
  }
  return worked;
}

async function sums(client: Client) {
  const { rows } = await client.query(`
    select (select count(*)::integer from jobs) as jobs, (select count(*)::integer from units) as units,
      (select sum(unit_cost_cents)::integer from part_lines where line = 1 and job_id <= 1000) as cents, (select count(*)::integer from part_lines) as lines,
      (select sum(value)::integer from readings) as readings, (select count(*)::integer from policies) as policies`);
  return rows[0];
}
