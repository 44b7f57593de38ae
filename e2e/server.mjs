// The site as the browser tests see it: built as for users, on a throw-away database with a small invented company.
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import process from "node:process";
import { register } from "tsx/esm/api";
import { buildIfChanged } from "../app/commands/start/build.mjs";
import { loadDemoIfEmpty } from "../app/commands/start/demo.mjs";
import { enterProjectFolder } from "../app/commands/start/project-folder.mjs";
import { serve } from "../app/commands/start/serve.mjs";
import { stopSignal } from "../app/commands/start/stop-signal.mjs";

const size = 0.1;

async function run() {
  enterProjectFolder();
  const signal = stopSignal();
  const note = process.env.E2E_DATABASE_NOTE;
  await buildIfChanged(signal);
  register();
  const { throwAwayDatabase } = await import("../tests/database-server.ts");
  const { migrateDatabase } = await import("../db/migrate.ts");
  const folder = mkdtempSync(join(tmpdir(), "ohmsworth-e2e-"));
  const { url, drop } = await throwAwayDatabase();
  try {
    await migrateDatabase(url);
    await loadDemoIfEmpty({ url, isEmpty: () => true }, { folder, size, signal });
    if (note) writeFileSync(note, url, { mode: 0o600 }); // for tests of the commands; it holds the password
    await serve({ port: Number(process.env.PORT), development: false, databaseUrl: url, signal, announce: () => {} });
  } finally {
    if (note) rmSync(note, { force: true });
    await drop();
    rmSync(folder, { recursive: true, force: true });
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
