import { randomBytes } from "node:crypto";
import { existsSync, mkdtempSync, rmSync, statfsSync } from "node:fs";
import { freemem, tmpdir } from "node:os";
import { join } from "node:path";
import { Client } from "pg";
import type { TestProject } from "vitest/node";
import { bundleCommands } from "@/app/commands/start/bundle-commands.mjs";
import { readDatabaseSetting } from "@/db/connection";
import { ensureEmbeddedServer } from "@/db/embedded/ensure-server";
import { migrateDatabase } from "@/db/migrate";
import { prepareSiteRole } from "@/db/site-role/prepare-site-role";
import { siteRole } from "@/db/site-role/site-address";
import { watchStatements } from "./statements-that-last";
import { workersOfDatabaseTests } from "./workers.mjs";

declare module "vitest" {
  interface ProvidedContext {
    /** As the owner of the tables. */
    databaseUrls: readonly string[];
    /** As the site signs in: the program under test may do no more than it may at work. */
    siteUrls: readonly string[];
    /** Folder of the programs that tests start in processes of their own, bundled. */
    commands: string;
  }
}

/** Where less is free the disk is used: the server keeps up to an eighth of it as its log, and the machine needs the rest. */
const roomBytes = 6 * 1024 ** 3;

type ThrowAway = { readonly url: string; drop(): Promise<void> };

/** Programs that many tests start: reading them from their sources each time would cost more than what they do. */
const programs = [
  "app/commands/load.ts",
  "app/commands/restore-trial.ts",
  "app/commands/work-on-file.ts",
  "tests/db/embedded/ask-for-server.ts",
];

/**
 * Gives each worker of the database tests a migrated database that nobody else uses, and removes them afterwards:
 * on a server of their own in a temporary folder, or, with DATABASE_URL set, on that server. Data of the user is never
 * touched.
 */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const commands = join("node_modules", ".cache", `ohmsworth-commands-${process.pid}`);
  await bundleCommands(programs, commands);
  const first = await throwAwayDatabase();
  const more: ThrowAway[] = [];
  const siteUrls: string[] = [];
  const endWatch = watchStatements(first.url);
  const dropAll = async () => {
    endWatch();
    rmSync(commands, { recursive: true, force: true });
    for (const database of more) await database.drop();
    await first.drop();
  };
  try {
    for (let worker = 1; worker < workersOfDatabaseTests; worker += 1) more.push(await newDatabaseOn(first.url));
    for (const { url } of [first, ...more]) {
      await migrateDatabase(url);
      siteUrls.push((await prepareSiteRole(url)).url);
    }
  } catch (error) {
    await dropAll();
    throw error;
  }
  project.provide("commands", commands);
  project.provide("databaseUrls", [first.url, ...more.map(({ url }) => url)]);
  project.provide("siteUrls", siteUrls);
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
  const folder = mkdtempSync(join(roomInMemory() ?? tmpdir(), "ohmsworth-test-"));
  const server = await ensureEmbeddedServer(folder);
  return {
    url: server.url,
    async drop() {
      await server.stop();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/**
 * Where Linux keeps files in memory, if there is room for all that the tests leave: the server writes to the disk what it is
 * told to, as it must for the product to accept it, and there that costs nothing.
 */
function roomInMemory(): string | undefined {
  const folder = "/dev/shm";
  if (process.platform !== "linux" || !existsSync(folder)) return undefined;
  const { bavail, bsize } = statfsSync(folder);
  return bavail * bsize < roomBytes || freemem() < roomBytes ? undefined : folder;
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
  return {
    url: address.href,
    async drop() {
      await onServer(given, `drop database if exists ${name} with (force)`);
      await onServer(given, `drop role if exists ${siteRole(name)}`);
    },
  };
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
