import { randomBytes } from "node:crypto";
import { Client } from "pg";
import type { Manifest } from "./manifest";
import { restoreBackup } from "./restore-backup";

/**
 * Restores a backup into a database of its own on the same server, and drops that again: only a backup that has been
 * restored is known to be one. The outcome is kept in the database that is backed up, so that the site can show it.
 * @throws what the restore threw, after it was kept
 */
export async function tryBackup(
  { url, folder }: { readonly url: string; readonly folder: string },
  manifest: Manifest,
  now: () => Date,
): Promise<void> {
  const name = `ohmsworth_trial_${randomBytes(6).toString("hex")}`;
  const address = new URL(url);
  address.pathname = `/${name}`;
  await onServer(url, `create database ${name} template template0 encoding 'UTF8'`);
  let problem: unknown;
  try {
    await restoreBackup({ url: address.href, folder });
  } catch (error) {
    problem = error;
  } finally {
    await onServer(url, `drop database ${name} with (force)`);
  }
  const rows = manifest.tables.reduce((sum, table) => sum + table.rows, 0);
  await onServer(
    url,
    `insert into restore_drills (backup_at, finished_at, rows, problem) values ($1, greatest($1::timestamptz, $2), $3, $4)`,
    [manifest.madeAt, now().toISOString(), rows, problem === undefined ? null : sentence(problem)],
  );
  if (problem !== undefined) throw problem;
}

function sentence(problem: unknown): string {
  return problem instanceof Error ? problem.message : String(problem);
}

async function onServer(url: string, statement: string, values: readonly unknown[] = []): Promise<void> {
  const client = new Client({ connectionString: url, application_name: "ohmsworth backup" });
  client.on("error", () => {}); // the statement reports it
  await client.connect();
  try {
    await client.query(statement, [...values]);
  } finally {
    await client.end();
  }
}
