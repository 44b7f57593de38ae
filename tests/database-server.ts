import { randomBytes } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Client } from "pg";
import type { TestProject } from "vitest/node";
import { readDatabaseSetting } from "@/db/connection";
import { ensureEmbeddedServer } from "@/db/embedded/ensure-server";
import { migrateDatabase } from "@/db/migrate";

declare module "vitest" {
  interface ProvidedContext {
    databaseUrl: string;
  }
}

type ThrowAway = { readonly url: string; drop(): Promise<void> };

/**
 * Gives the database tests a migrated database that nobody else uses, and removes it afterwards: a server of its own
 * in a temporary folder, or, with DATABASE_URL set, a new database on that server. Data of the user is never touched.
 */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const database = await throwAwayDatabase();
  try {
    await migrateDatabase(database.url);
  } catch (error) {
    await database.drop();
    throw error;
  }
  const before = process.env.DATABASE_URL;
  process.env.DATABASE_URL = database.url; // workers start with this environment
  project.provide("databaseUrl", database.url);
  return async () => {
    if (before === undefined) delete process.env.DATABASE_URL;
    else process.env.DATABASE_URL = before;
    await database.drop();
  };
}

/** An empty database, not yet migrated. */
export async function throwAwayDatabase(): Promise<ThrowAway> {
  const given = readDatabaseSetting(process.env);
  return given === undefined ? ownServer() : newDatabaseOn(given);
}

async function ownServer(): Promise<ThrowAway> {
  const folder = mkdtempSync(join(tmpdir(), "ohmsworth-test-"));
  const server = await ensureEmbeddedServer(folder);
  return {
    url: server.url,
    async drop() {
      await server.stop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

async function newDatabaseOn(given: string): Promise<ThrowAway> {
  const name = `ohmsworth_test_${randomBytes(6).toString("hex")}`;
  const address = new URL(given);
  address.pathname = `/${name}`;
  await onServer(given, `create database ${name} template template0 encoding 'UTF8'`);
  return { url: address.href, drop: () => onServer(given, `drop database if exists ${name} with (force)`) };
}

async function onServer(url: string, statement: string): Promise<void> {
  const client = new Client({ connectionString: url });
  await client.connect();
  try {
    await client.query(statement);
  } finally {
    await client.end();
  }
}
