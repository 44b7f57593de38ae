// Runs before each file of database tests: all that the file starts uses the database of the worker that it runs in.
import { inject } from "vitest";

process.env.DATABASE_URL = ownDatabaseUrl();
process.env.OHMSWORTH_SECRET ??= "lGmU3xq0Zr8bWnJ5sK2vTfYdHc7eAo4p"; // signs nothing but sessions of tests

/** The database of this worker: as many were made as there are workers, and workers are numbered from 1. */
export function ownDatabaseUrl(): string {
  const worker = Number(process.env.VITEST_POOL_ID);
  const url = inject("databaseUrls")[worker - 1];
  if (url === undefined) throw new Error(`no database was made for worker ${worker}`);
  return url;
}
