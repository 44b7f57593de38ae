// npm run soak -- load: a company of the size of a large one, served as to users, and asked by twenty people at once.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import process from "node:process";
import { parseArgs } from "node:util";
import { buildIfChanged } from "../../app/commands/start/build.mjs";
import { choosePort } from "../../app/commands/start/port.mjs";
import { serve } from "../../app/commands/start/serve.mjs";
import { stopSignal } from "../../app/commands/start/stop-signal.mjs";
import { makeCompany } from "./make-company";
import { report } from "./report";
import { residentMegabytes } from "./resident-memory";
import { type Asked, askFor } from "./users";

const { values } = parseArgs({
  options: {
    jobs: { type: "string", default: "100000" },
    users: { type: "string", default: "20" },
    minutes: { type: "string", default: "10" },
    seed: { type: "string", default: "1" },
  },
});

async function main(): Promise<number> {
  const signal: AbortSignal = stopSignal();
  await buildIfChanged(signal);
  const { throwAwayDatabase } = await import("../database-server");
  const database = await throwAwayDatabase();
  process.env.DATABASE_URL = database.url;
  const { closeDatabase } = await import("@/db/close-database");
  const folder = mkdtempSync(join(tmpdir(), "ohmsworth-load-"));
  try {
    const company = await makeCompany({ url: database.url, folder, jobs: Number(values.jobs), signal });
    console.log(company.sentence);
    await closeDatabase();
    return await serveAndAsk(database.url, company.addresses, signal);
  } finally {
    await closeDatabase();
    await database.drop();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function serveAndAsk(databaseUrl: string, addresses: readonly string[], outside: AbortSignal): Promise<number> {
  const port = await choosePort(undefined);
  const stop = new AbortController();
  outside.addEventListener("abort", () => stop.abort(), { once: true });
  process.env.OHMSWORTH_LOG = "failures";
  process.env.OHMSWORTH_NIGHTLY = "off";
  let ready: () => void = () => {};
  const listening = new Promise<void>((resolve) => {
    ready = resolve;
  });
  const served = serve({ port, development: false, databaseUrl, signal: stop.signal, announce: ready });
  await Promise.race([listening, served]);
  try {
    const site = `http://127.0.0.1:${port}`;
    for (const address of addresses) await fetch(`${site}${address}`).then((answer) => answer.arrayBuffer()); // once, so that all is loaded
    const memory: number[] = [];
    const watching = setInterval(() => memory.push(residentMegabytes(process.pid)), 5000);
    const { users, minutes, seed } = values;
    const asked: readonly Asked[] = await askFor({
      site,
      addresses,
      users: Number(users),
      seconds: Number(minutes) * 60,
      seed: Number(seed),
      signal: stop.signal,
    });
    clearInterval(watching);
    return report(asked, memory) ? 0 : 1;
  } finally {
    stop.abort();
    await served;
  }
}

main().then(
  (code) => process.exit(code),
  (error) => {
    console.error(error);
    process.exit(1);
  },
);
