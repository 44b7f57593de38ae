import { say } from "./say.mjs";

/**
 * Opens the database, embedded or the one that DATABASE_URL names, and brings it to the newest schema.
 * The database's own modules are TypeScript, and can be loaded only now that everything is installed.
 */
export async function openDatabase() {
  const { register } = await import("tsx/esm/api");
  register();
  const { databaseUrl } = await import("../../../db/connection.ts");
  const { migrateDatabase } = await import("../../../db/migrate.ts");
  const { seedCatalogue } = await import("../../../db/seed-catalogue.ts");
  const { closeDatabase } = await import("../../../db/close-database.ts");
  const { holdsCompany } = await import("../../../db/queries/holds-company.ts");
  const { readOnly } = await import("../../../db/client.ts");
  say(process.env.DATABASE_URL ? "opening the database that DATABASE_URL names …" : "starting the database in .data …");
  try {
    const url = await databaseUrl();
    await migrateDatabase(url);
    await seedCatalogue();
    return { url, isEmpty: async () => !(await readOnly(holdsCompany)), close: closeDatabase };
  } catch (error) {
    await closeDatabase();
    throw error;
  }
}
