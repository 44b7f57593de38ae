// The site as the browser tests see it: built as for users, one for each worker, each on a throw-away
// database with the same small invented company.
import { randomBytes } from "node:crypto";
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
import { bundled } from "./bundled.mjs";
import { emptySite, sites } from "./sites.mjs";

const size = 0.1;
process.env.OHMSWORTH_SECRET = randomBytes(32).toString("base64url");

async function run() {
  enterProjectFolder();
  const signal = stopSignal();
  await buildIfChanged(signal);
  register();
  const { throwAwayDatabase, copyOfDatabase, emptyDatabaseBeside } = await import("../tests/database-server.ts");
  const { migrateDatabase } = await import("../db/migrate.ts");
  const folder = mkdtempSync(join(tmpdir(), "ohmsworth-e2e-"));
  const first = await throwAwayDatabase();
  const databases = [first];
  try {
    await migrateDatabase(first.url);
    await loadDemoIfEmpty({ url: first.url, isEmpty: () => true }, { folder, size, signal, wordsFor: bundled });
    const { writeFreeJobs } = await import("./free-jobs.ts");
    await runNode("Loading jobs to claim", [...bundled("app/commands/load.ts"), ...writeFreeJobs(folder)], {
      signal,
      environment: { DATABASE_URL: first.url },
    });
    for (let more = 1; more < sites.length; more += 1) databases.push(await copyOfDatabase(first.url));
    const empty = await emptyDatabaseBeside(first.url);
    databases.push(empty);
    await migrateDatabase(empty.url);
    await serveAll(databases, signal);
  } finally {
    for (const database of databases.reverse()) await database.drop();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The first site comes last: the tests start as soon as it answers. */
async function serveAll(databases, signal) {
  const served = [];
  for (const [n, site] of [...[...sites, emptySite].entries()].reverse()) {
    const announce = (listening) => serveSite(site, databases[n].url, signal, listening).finally(listening);
    await new Promise((listening) => served.push(announce(listening)));
  }
  await Promise.all(served);
}

/** The note tells tests of the commands which database it is; it holds the owner's password. The site has its own login. */
async function serveSite({ port, note, people }, ownerUrl, signal, announce) {
  writeFileSync(note, ownerUrl, { mode: 0o600 });
  try {
    const { prepareSiteRole } = await import("../db/site-role/prepare-site-role.ts");
    const { url: databaseUrl } = await prepareSiteRole(ownerUrl);
    await serve({ port, development: false, databaseUrl, signal, announce, people });
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
