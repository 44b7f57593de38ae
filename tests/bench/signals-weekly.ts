// What the night costs a very large company: the run that reads all, once a quarter, and that of a week, with all reading.
import { workOutByQuarter } from "@/app/repeats/signals/work-out-by-quarter";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { migrateDatabase } from "@/db/migrate";
import { seedCatalogue } from "@/db/seed-catalogue";
import { refreshCounts } from "@/db/writes/refresh-counts";
import { day } from "@/lib/calendar/day";
import { throwAwayDatabase } from "../database-server";
import { databaseSeconds } from "./database-seconds";
import { makeLargeCompany } from "./large-company";
import { say } from "./say";

const until = day("2026-10-31");

/** @param jobs  five units for each, which is 5,000,000 for 1,000,000 */
export async function benchSignalsWeekly(jobs = 1_000_000): Promise<void> {
  const given = process.env.DATABASE_URL;
  const database = await throwAwayDatabase();
  process.env.DATABASE_URL = database.url;
  process.env.OHMSWORTH_TODAY = until;
  try {
    await migrateDatabase(database.url);
    await seedCatalogue();
    await makeLargeCompany(database.url, { units: 5 * jobs, jobs, until });
    await inTransaction((tx) => refreshCounts(tx, "all"), { timeoutSeconds: 7200 });
    await measureWeeks(`${5 * jobs} units, ${jobs} jobs`);
  } finally {
    await closeDatabase();
    if (given === undefined) delete process.env.DATABASE_URL;
    else process.env.DATABASE_URL = given;
    await database.drop();
  }
}

/** Of the database that is set. */
export async function measureWeeks(company: string): Promise<void> {
  for (const wanted of [60, 5, 5, 5]) {
    const [before, own, began] = [await databaseSeconds(), process.cpuUsage(), performance.now()];
    const { kind, run } = await workOutByQuarter({ on: until, timeZone: "UTC" });
    const clock = (performance.now() - began) / 1000;
    const { user, system } = process.cpuUsage(own);
    const [node, database] = [(user + system) / 1e6, (await databaseSeconds()) - before];
    const cells = run?.kind === "followed" ? run.cells : 0;
    say(
      `${company}, ${cells} cells: ${kind}`,
      `${clock.toFixed(1)} s by the clock, ${(node + database).toFixed(1)} s of processor time (wanted: ${wanted} s), of which the database ${database.toFixed(1)}`,
    );
  }
}
