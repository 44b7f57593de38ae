// The site as the browser tests see it: built as for users, one for each worker, each on a throw-away
// database with the same small invented company.
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import process from "node:process";
import { register } from "tsx/esm/api";
import { buildIfChanged } from "../app/commands/start/build.mjs";
import { loadDemoIfEmpty } from "../app/commands/start/demo.mjs";
import { enterProjectFolder } from "../app/commands/start/project-folder.mjs";
import { runNode } from "../app/commands/start/run-step.mjs";
import { serve } from "../app/commands/start/serve.mjs";
import { stopSignal } from "../app/commands/start/stop-signal.mjs";
import { sites } from "./sites.mjs";

const size = 0.1;

async function run() {
  enterProjectFolder();
  const signal = stopSignal();
  await buildIfChanged(signal);
  register();
  const { throwAwayDatabase, copyOfDatabase } = await import("../tests/database-server.ts");
  const { migrateDatabase } = await import("../db/migrate.ts");
  const folder = mkdtempSync(join(tmpdir(), "ohmsworth-e2e-"));
  const first = await throwAwayDatabase();
  const databases = [first];
  try {
    await migrateDatabase(first.url);
    await loadDemoIfEmpty({ url: first.url, isEmpty: () => true }, { folder, size, signal });
    const { writeFreeJobs } = await import("./free-jobs.ts");
    await runNode("Loading jobs to claim", ["--import", "tsx", "app/commands/load.ts", ...writeFreeJobs(folder)], {
      signal,
      environment: { DATABASE_URL: first.url },
    });
    for (let more = 1; more < sites.length; more += 1) databases.push(await copyOfDatabase(first.url));
    await serveAll(databases, signal);
  } finally {
    for (const database of databases.reverse()) await database.drop();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The first site comes last: the tests start as soon as it answers. */
async function serveAll(databases, signal) {
  const served = [];
  for (const n of [...sites.keys()].reverse()) {
    await new Promise((listening) => {
      served.push(serveSite(sites[n], databases[n].url, signal, listening).finally(listening));
    });
  }
  await Promise.all(served);
}

/** The note tells tests of the commands which database it is; it holds the password. */
async function serveSite({ port, note }, databaseUrl, signal, announce) {
  writeFileSync(note, databaseUrl, { mode: 0o600 });
  try {
    await serve({ port, development: false, databaseUrl, signal, announce });
  } finally {
    rmSync(note, { force: true });
  }
}

run().then(
  () => process.exit(0),
  (error) => {
    if (error?.name === "AbortError") process.exit(0);
    console.error(error);
    process.exit(1);
  },
);
