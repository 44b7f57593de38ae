import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { closeDatabase } from "@/db/close-database";
import { migrateDatabase } from "@/db/migrate";
import { seedCatalogue } from "@/db/seed-catalogue";
import { loadFile } from "@/db/writes/load-file";
import { throwAwayDatabase } from "../database-server";

const shop = {
  schema: "ohmsworth/shop/1",
  name: "Bench",
  currency: "USD",
  timeZone: "UTC",
  territory: "US",
  recordsFrom: null,
  madeGraceMonths: 3,
  demo: true,
};

/** Works on a database of its own that holds a company and nothing else, so that no size profits from what another left in memory. */
export async function withBenchCompany<R>(folder: string, work: () => Promise<R>): Promise<R> {
  const given = process.env.DATABASE_URL;
  const database = await throwAwayDatabase();
  process.env.DATABASE_URL = database.url;
  try {
    await migrateDatabase(database.url);
    await seedCatalogue();
    const path = join(folder, "shop.json");
    writeFileSync(path, JSON.stringify(shop));
    await loadFile({ path, fileName: "shop.json", mode: "add" });
    return await work();
  } finally {
    await closeDatabase();
    if (given === undefined) delete process.env.DATABASE_URL;
    else process.env.DATABASE_URL = given;
    await database.drop();
  }
}
