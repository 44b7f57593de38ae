// The database server goes down at once, as in a power cut, while a load is under way, and comes back. Three points in
// time by default; SOAK_SEEDS takes more.
import { setTimeout as pause } from "node:timers/promises";
import { sql } from "drizzle-orm";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { ensureEmbeddedServer } from "@/db/embedded/ensure-server";
import { migrateDatabase } from "@/db/migrate";
import { seedCatalogue } from "@/db/seed-catalogue";
import { ownDatabaseUrl } from "../../own-database";
import { soakSeeds } from "../../soak-seeds";
import { chances } from "../adding-up";
import { newDataFolder, removeDataFolder, serverPid } from "../embedded/servers";
import { csv, fileFolder, job, shopDocument, unit } from "../intake-files";

const files = fileFolder();
let folder = "";
const escaped: unknown[] = [];
const note = (error: unknown) => void escaped.push(error);

beforeAll(async () => {
  process.on("uncaughtException", note);
  await closeDatabase();
  folder = newDataFolder();
  const { url } = await ensureEmbeddedServer(folder);
  process.env.DATABASE_URL = url;
  await migrateDatabase(url);
  await seedCatalogue();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv(Array.from({ length: 800 }, (_, n) => unit(`S${n}`))));
});
afterAll(async () => {
  await closeDatabase();
  await removeDataFolder(folder);
  process.env.DATABASE_URL = ownDatabaseUrl();
  files.remove();
  process.off("uncaughtException", note);
});

const jobsOf = (seed: number) => csv(Array.from({ length: 800 }, (_, n) => job(`J${seed}-${n}`, `S${n}`)));

async function stored(seed: number): Promise<{ jobs: number; batches: number }> {
  const [found] = await readOnly((db) =>
    db.rows<{ jobs: number; batches: number }>(sql`
      select (select count(*)::integer from jobs where job_number like ${`J${seed}-%`}) as jobs,
        (select count(*)::integer from batches where kind = 'jobs' and file_name = ${`${seed}.csv`}) as batches`),
  );
  return found ?? { jobs: -1, batches: -1 };
}

/** How long a load takes that nobody disturbs. */
let usualMs = 0;

test("a load that nobody disturbs goes in", async () => {
  const start = performance.now();
  expect(await files.load(jobsOf(0), "add", "0.csv")).toMatchObject({ kind: "added" });
  usualMs = performance.now() - start;
});

test.each(soakSeeds([1, 2, 3]))(
  "down at point %i and up again: all of the load or nothing, and work goes on within ten seconds",
  async (seed) => {
    const chance = chances(seed);
    const load = files.load(jobsOf(seed), "add", `${seed}.csv`).then(
      (result) => result.kind,
      () => "failed",
    );
    await pause(chance() * usualMs);
    process.kill(serverPid(folder), "SIGQUIT"); // "immediate": nothing is written out, no transaction ended
    await pause(50);
    await ensureEmbeddedServer(folder);
    const back = performance.now();
    const after = await stored(seed);
    expect(performance.now() - back).toBeLessThan(10_000);
    const outcome = await Promise.race([load, pause(30_000).then(() => "never answered")]);
    expect(outcome).not.toBe("never answered");
    const settled = await stored(seed);
    expect([
      [0, 0],
      [800, 1],
    ]).toContainEqual([settled.jobs, settled.batches]);
    expect([0, 800]).toContain(after.jobs);
    if (outcome === "added") expect(settled.jobs).toBe(800);
    await files.load(jobsOf(seed), "add", `${seed}.csv`); // again, as a person would
    expect(await stored(seed)).toEqual({ jobs: 800, batches: 1 });
    expect(escaped).toEqual([]);
  },
);
