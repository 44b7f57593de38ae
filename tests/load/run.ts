// npm run soak -- load: a company of the size of a large one, served as to users, and asked by twenty people at once.
import { randomBytes } from "node:crypto";
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
import { signInPeople } from "./sign-in-people";
import { type Asked, ask, askFor } from "./users";

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
  process.env.OHMSWORTH_SECRET = randomBytes(32).toString("base64url"); // the site takes sessions that are signed with it
  const { closeDatabase } = await import("@/db/close-database");
  const folder = mkdtempSync(join(tmpdir(), "ohmsworth-load-"));
  try {
    const company = await makeCompany({ url: database.url, folder, jobs: Number(values.jobs), signal });
    console.log(company.sentence);
    const people = await signInPeople(Number(values.users));
    await closeDatabase();
    return await serveAndAsk(
      { databaseUrl: await siteUrlOf(database.url), addresses: company.addresses, people },
      signal,
    );
  } finally {
    await closeDatabase();
    await database.drop();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function siteUrlOf(ownerUrl: string): Promise<string> {
  const { prepareSiteRole } = await import("@/db/site-role/prepare-site-role");
  return (await prepareSiteRole(ownerUrl)).url;
}

interface Asking {
  readonly databaseUrl: string;
  readonly addresses: readonly string[];
  readonly people: readonly Readonly<Record<string, string>>[];
}

async function serveAndAsk({ databaseUrl, addresses, people }: Asking, outside: AbortSignal): Promise<number> {
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
    await lookAtEachAlone(site, addresses, people[0] ?? {});
    const memory: number[] = [];
    const watching = setInterval(() => memory.push(residentMegabytes(process.pid)), 5000);
    const { minutes, seed } = values;
    const asked: readonly Asked[] = await askFor({
      site,
      addresses,
      people,
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

/** Once, so that all is loaded; a page that fails is named before ten minutes are spent on it. */
async function lookAtEachAlone(
  site: string,
  addresses: readonly string[],
  headers: Readonly<Record<string, string>>,
): Promise<void> {
  for (const address of new Set(addresses)) {
    const { status, ms } = await ask(`${site}${address}`, headers);
    console.log(`alone ${String(Math.round(ms)).padStart(6)} ms  ${status}  ${address}`);
  }
}

main().then(
  (code) => process.exit(code),
  (error) => {
    console.error(error);
    process.exit(1);
  },
);
