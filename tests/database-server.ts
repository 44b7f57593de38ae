import { randomBytes } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Client } from "pg";
import type { TestProject } from "vitest/node";
import { readDatabaseSetting } from "@/db/connection";
import { ensureEmbeddedServer } from "@/db/embedded/ensure-server";
import { migrateDatabase } from "@/db/migrate";
import { workersOfDatabaseTests } from "./workers.mjs";

declare module "vitest" {
  interface ProvidedContext {
    databaseUrls: readonly string[];
  }
}

type ThrowAway = { readonly url: string; drop(): Promise<void> };

/**
 * Gives each worker of the database tests a migrated database that nobody else uses, and removes them afterwards:
 * on a server of their own in a temporary folder, or, with DATABASE_URL set, on that server. Data of the user is never
 * touched.
 */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const first = await throwAwayDatabase();
  const more: ThrowAway[] = [];
  const dropAll = async () => {
    for (const database of more) await database.drop();
    await first.drop();
  };
  try {
    for (let worker = 1; worker < workersOfDatabaseTests; worker += 1) more.push(await newDatabaseOn(first.url));
    for (const { url } of [first, ...more]) await migrateDatabase(url);
  } catch (error) {
    await dropAll();
    throw error;
  }
  project.provide("databaseUrls", [first.url, ...more.map(({ url }) => url)]);
  return dropAll;
}

/** An empty database, not yet migrated. */
export async function throwAwayDatabase(): Promise<ThrowAway> {
  const given = readDatabaseSetting(process.env);
  return given === undefined ? ownServer() : newDatabaseOn(given);
}

/** Another database beside it, with nothing in it. */
export function emptyDatabaseBeside(url: string): Promise<ThrowAway> {
  return newDatabaseOn(url);
}

/** Another database beside it with the same content; nobody may be connected to it meanwhile. */
export function copyOfDatabase(url: string): Promise<ThrowAway> {
  return newDatabaseOn(url, new URL(url).pathname.slice(1));
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

async function newDatabaseOn(given: string, template = "template0"): Promise<ThrowAway> {
  const name = `ohmsworth_test_${randomBytes(6).toString("hex")}`;
  const address = new URL(given);
  address.pathname = `/${name}`;
  const from = new URL(given);
  from.pathname = "/postgres"; // a database that is copied from must have no connection, not even this one
  await onServer(
    template === "template0" ? given : from.href,
    `create database ${name} template "${template}" encoding 'UTF8'`,
  );
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
