import { fileURLToPath } from "node:url";
import { drizzle } from "drizzle-orm/node-postgres";
import { migrate } from "drizzle-orm/node-postgres/migrator";
import { Client } from "pg";

/** Any number will do as long as it never changes: it names the lock among all locks of the database. */
const migrationLock = 7_016_020_001;

const folder = fileURLToPath(new URL("./migrations", import.meta.url));

/**
 * Brings the database to the newest schema; does nothing when it is there. All missing steps are one transaction.
 * Processes that start together take turns, and the second finds nothing left to do.
 */
export async function migrateDatabase(url: string, migrationsFolder: string = folder): Promise<void> {
  const client = new Client({ connectionString: url, application_name: "ohmsworth migrate" });
  client.on("error", () => {}); // the statement in hand reports it
  await client.connect();
  try {
    await client.query("select pg_advisory_lock($1)", [migrationLock]);
    await client.query("set client_min_messages = warning");
    await migrate(drizzle(client), { migrationsFolder });
  } finally {
    await client.end(); // gives the lock back
  }
}
