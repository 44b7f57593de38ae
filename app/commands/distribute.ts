import { databaseUrl } from "@/db/connection";
import { spreadTablesOver } from "@/db/distributed/spread-tables";
import { migrateDatabase } from "@/db/migrate";
import { runCommand } from "./run-command";

/** Brings the schema up and spreads its tables over the machines of the server that DATABASE_URL names. */
async function main(): Promise<number> {
  const url = await databaseUrl();
  await migrateDatabase(url);
  const { machines } = await spreadTablesOver(url);
  console.log(`The tables of units are spread over ${machines} machines. Load the company, or restore its backup.`);
  return 0;
}

await runCommand(main);
