import { createHash } from "node:crypto";
import { sql } from "drizzle-orm";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { databaseUrl } from "@/db/connection";
import { recount } from "@/db/writes/recount";
import { ownDatabaseUrl } from "../../own-database";
import { soakSeeds } from "../../soak-seeds";
import { chances } from "../adding-up";
import { csv, fileFolder, shopDocument, startAfresh, unit } from "../intake-files";
import { counts } from "../load-outcome";
import { stateOfData } from "../state-of-data";
import { draftedFile, type LoadToKill, largeFile, matchedFile } from "./loads-to-kill";
import { type Course, LoadWatcher, type Phase, phases } from "./watched-load";

// The process that loads is ended by force (kill -9) at a point drawn from a seed: while it reads, stages, merges, or
// after the commit and before it has said so. Then the same command is given again, as a person would.

process.env.DATABASE_URL = ownDatabaseUrl(); // only the owner of the tables may fill new ones in their place

const files = fileFolder();
const loads = [matchedFile(files.folder), draftedFile(files.folder), largeFile(files.folder)];
const watcher = { current: undefined as LoadWatcher | undefined };
const seen: Record<string, number> = {};

interface Expected {
  readonly before: string;
  readonly after: string;
  readonly counts: readonly number[];
  readonly course: Course;
}
const expected = new Map<LoadToKill, Expected>();

function watching(): LoadWatcher {
  if (watcher.current === undefined) throw new Error("nobody watches");
  return watcher.current;
}

beforeAll(async () => {
  watcher.current = new LoadWatcher(await databaseUrl());
  await watching().open();
});
afterAll(async () => {
  if (Object.keys(seen).length > 0) console.log(`killed: ${JSON.stringify(seen)}`);
  await watching().close();
  files.remove();
  await closeDatabase();
});

async function digest(): Promise<string> {
  return createHash("sha256")
    .update(JSON.stringify(await stateOfData()))
    .digest("hex");
}

async function freshFor(load: LoadToKill): Promise<void> {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await load.prepare();
}

/** What the load gives when nobody disturbs it: found once by the same command. */
async function expectedOf(load: LoadToKill): Promise<Expected> {
  const known = expected.get(load);
  if (known !== undefined) return known;
  await freshFor(load);
  const before = await digest();
  const dry = counts(await load.here("dry run"));
  const command = await load.command();
  const course = await watching().run(command ?? []);
  expect(await storedCounts(), course.said).toEqual([dry]);
  const found = { before, after: await digest(), counts: dry, course };
  expected.set(load, found);
  return found;
}

/** Counts of each load but the company's. */
async function storedCounts(): Promise<readonly (readonly number[])[]> {
  const rows = await readOnly((db) =>
    db.rows<{ counts: number[] }>(
      sql`select array[rows_total, rows_new, rows_changed, rows_same, rows_held] as counts from batches where kind <> 'shop'`,
    ),
  );
  return rows.map((row) => row.counts);
}

/** From when the phase begins to when the next does. */
function lengthOf({ began, ended }: Course, phase: Phase): number {
  const next = phases[phases.indexOf(phase) + 1];
  const start = began[phase] ?? 0;
  return Math.max(0, ((next === undefined ? undefined : began[next]) ?? ended) - start);
}

test.each(soakSeeds([1, 2]))(
  "killed at point %i it is not loaded or loaded once, and the same command brings it in",
  { timeout: 300_000 },
  async (seed) => {
    const load = loads[seed % loads.length];
    const phase = phases[seed % phases.length];
    if (load === undefined || phase === undefined) throw new RangeError("seed: gives no load");
    const wanted = await expectedOf(load);
    await freshFor(load);
    const chance = chances(seed);
    const kill = { phase, after: chance() * (phase === "commit" ? 0.3 : 0.9) * lengthOf(wanted.course, phase) };
    const course = await watching().run((await load.command()) ?? [], kill);
    const stored = await storedCounts();
    const state = await digest();
    const outcome = stored.length === 0 ? "not loaded" : "loaded once";
    const name = `${load.name}, ${course.killed ? course.last : "too late"}: ${outcome}`;
    seen[name] = (seen[name] ?? 0) + 1;
    expect(state, `${name} ${course.said}`).toBe(stored.length === 0 ? wanted.before : wanted.after);
    expect(stored, name).toEqual(stored.length === 0 ? [] : [wanted.counts]);

    const again = await load.command();
    if (again !== undefined) expect((await watching().run(again)).said).not.toMatch(/error/i);
    expect(await storedCounts()).toEqual([wanted.counts]);
    expect(await digest()).toBe(wanted.after);
    expect((await recount()).filter(({ differing }) => differing > 0)).toEqual([]);
    await files.load(csv([unit("Z1")])); // whichever load comes next clears away what a dead one left
    expect(await leftovers()).toEqual([]);
  },
);

/** Staging tables, and a schema in which tables were being filled. */
async function leftovers(): Promise<readonly string[]> {
  const rows = await readOnly((db) =>
    db.rows<{ name: string }>(
      sql`select relname as name from pg_class where relname ~ '^staging_' and relkind = 'r' union all select nspname from pg_namespace where nspname = 'being_filled'`,
    ),
  );
  return rows.map(({ name }) => name);
}
