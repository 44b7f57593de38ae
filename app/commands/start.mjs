// npm start: from a fresh clone to a running site. Plain JavaScript with nothing but Node's own modules, because it
// runs before anything is installed.
import process from "node:process";
import { buildIfChanged } from "./start/build.mjs";
import { openDatabase } from "./start/database.mjs";
import { loadDemoIfEmpty } from "./start/demo.mjs";
import { installIfMissing } from "./start/install.mjs";
import { refuseOldNode } from "./start/node-version.mjs";
import { choosePort } from "./start/port.mjs";
import { enterProjectFolder } from "./start/project-folder.mjs";
import { Refusal, say } from "./start/say.mjs";
import { keepSecret } from "./start/secret.mjs";
import { serve } from "./start/serve.mjs";
import { stopSignal } from "./start/stop-signal.mjs";
import { tryBackupsWeekly } from "./start/weekly-trial.mjs";

const development = process.argv.includes("--dev");
const withDemo = !process.argv.includes("--no-demo");

async function start() {
  refuseOldNode();
  enterProjectFolder();
  const signal = stopSignal();
  if (process.env.PORT) await choosePort(process.env.PORT); // to be told at once, not after the build
  await installIfMissing(signal);
  const { OHMSWORTH_LISTEN: listen, OHMSWORTH_BACKUPS: backups } = await readAllSettings();
  const database = await openDatabase();
  try {
    if (withDemo) await loadDemoIfEmpty(database, { folder: ".data/demo", signal });
    await keepSecret();
    if (!development) await buildIfChanged(signal);
    const port = await choosePort(process.env.PORT);
    const people = await database.people();
    void tryBackupsWeekly({ folder: backups, database, signal }); // beside the site, until both are stopped
    await serve({ port, development, listen, databaseUrl: database.siteUrl, signal, people });
  } finally {
    await database.close();
    if (signal.aborted) say("Stopped.");
  }
}

/** Written in TypeScript, so it can be loaded only now that everything is installed. */
async function readAllSettings() {
  const { register } = await import("tsx/esm/api");
  register();
  const { readSettings } = await import("../_settings/settings.ts");
  return readSettings(process.env);
}

start().then(
  () => process.exit(0),
  (error) => {
    if (error?.name === "AbortError") process.exit(0); // asked to stop
    const forReader = error instanceof Refusal || ["SettingsError", "EmbeddedServerError"].includes(error?.name);
    console.error(forReader ? `ohmsworth: ${error.message}` : error);
    process.exit(1);
  },
);
