import { say } from "./say.mjs";

const ownerServes =
  "the site signs in to the database as the owner of its tables, since it could not be given a login of its own";

/**
 * Opens the database, embedded or the one that DATABASE_URL names, and brings it to the newest schema.
 * The database's own modules are TypeScript, and can be loaded only now that everything is installed.
 */
export async function openDatabase() {
  const { register } = await import("tsx/esm/api");
  register();
  const { databaseUrl } = await import("../../../db/connection.ts");
  const { migrateDatabase } = await import("../../../db/migrate.ts");
  const { prepareSiteRole } = await import("../../../db/site-role/prepare-site-role.ts");
  const { seedCatalogue } = await import("../../../db/seed-catalogue.ts");
  const { closeDatabase } = await import("../../../db/close-database.ts");
  const { holdsCompany } = await import("../../../db/queries/holds-company.ts");
  const { readOnly } = await import("../../../db/client.ts");
  const { loadWhetherAnybody } = await import("../../../db/queries/people.ts");
  const { loadShop } = await import("../../../db/queries/shop.ts");
  const { loadRestoreDrills } = await import("../../../db/queries/restore-drills.ts");
  const { restoreTrialDue } = await import("../../_health/restore-trial-due.ts");
  const { addDemoPeople } = await import("../../../db/writes/people/add-demo-people.ts");
  say(process.env.DATABASE_URL ? "opening the database that DATABASE_URL names …" : "starting the database in .data …");
  try {
    const url = await databaseUrl();
    await migrateDatabase(url);
    await seedCatalogue();
    const site = await prepareSiteRole(url);
    if (site.kind === "owner") say(`${ownerServes} (${site.reason}).`);
    return {
      url,
      /** What the site itself signs in with: it can neither alter tables nor write the change log. */
      siteUrl: site.url,
      isEmpty: async () => !(await readOnly(holdsCompany)),
      people: async () => {
        await addDemoPeople(); // also for an invented company of before people signed in
        const { anybody, shop } = await readOnly(async (db) => ({
          anybody: await loadWhetherAnybody(db),
          shop: await loadShop(db),
        }));
        return anybody ? (shop.demo ? "of the invented company" : "known") : "nobody yet";
      },
      isTrialDue: async (now) =>
        await readOnly(async (db) => {
          const { timeZone } = await loadShop(db);
          return restoreTrialDue({ now, timeZone, drills: await loadRestoreDrills(db) });
        }),
      close: closeDatabase,
    };
  } catch (error) {
    await closeDatabase();
    throw error;
  }
}
