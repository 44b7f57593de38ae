import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { closeDatabase } from "@/db/close-database";
import { migrateDatabase } from "@/db/migrate";
import { seedCatalogue } from "@/db/seed-catalogue";
import { loadFile } from "@/db/writes/load-file";
import type { Day } from "@/lib/calendar/day";
import { scenarioOf } from "@/synthetic-data/scenario";
import { writeDemo } from "@/synthetic-data/write-demo";
import { throwAwayDatabase } from "../database-server";

/**
 * Work on a database of its own, which is gone afterwards. The files of the invented company lie ready; `load` takes one in.
 * @param size  1 is some 12,000 machines and 15,000 jobs
 * @param until  last day of its records, and today for all that asks for it
 */
export async function onInventedCompany(
  { size, until }: { readonly size: number; readonly until: Day },
  work: (load: (fileName: string) => Promise<void>) => Promise<void>,
): Promise<void> {
  const given = process.env.DATABASE_URL;
  const folder = mkdtempSync(join(tmpdir(), "ohmsworth-bench-"));
  const database = await throwAwayDatabase();
  process.env.DATABASE_URL = database.url;
  process.env.OHMSWORTH_TODAY = until;
  try {
    await migrateDatabase(database.url);
    await seedCatalogue();
    await writeDemo(scenarioOf({ seed: 1, size, until }), folder);
    await work(async (fileName) => {
      const path = join(folder, fileName);
      const result = await loadFile({ path, fileName, mode: "add and set aside", today: until });
      if (result.kind !== "added") throw new Error(`${fileName} was not added: ${result.kind}`);
    });
  } finally {
    await closeDatabase();
    if (given === undefined) delete process.env.DATABASE_URL;
    else process.env.DATABASE_URL = given;
    await database.drop();
    rmSync(folder, { recursive: true, force: true });
  }
}
