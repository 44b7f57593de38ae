// Runs before each file of database tests: all that the file starts uses the database of the worker that it runs in, and
// signs in to it as the site does.
import { Client } from "pg";
import { inject } from "vitest";

process.env.DATABASE_URL = ofThisWorker("siteUrls");
process.env.OHMSWORTH_SECRET ??= "lGmU3xq0Zr8bWnJ5sK2vTfYdHc7eAo4p"; // signs nothing but sessions of tests

/** The database of this worker, signed in to as the owner of its tables: for what a test does past the program. */
export function ownDatabaseUrl(): string {
  return ofThisWorker("databaseUrls");
}

/** Runs statements that the site may not. */
export async function asDatabaseOwner(statements: string): Promise<void> {
  const client = new Client({ connectionString: ownDatabaseUrl() });
  await client.connect();
  try {
    await client.query(statements);
  } finally {
    await client.end();
  }
}

/** As many databases were made as there are workers, and workers are numbered from 1. */
function ofThisWorker(which: "databaseUrls" | "siteUrls"): string {
  const worker = Number(process.env.VITEST_POOL_ID);
  const url = inject(which)[worker - 1];
  if (url === undefined) throw new Error(`no database was made for worker ${worker}`);
  return url;
}
