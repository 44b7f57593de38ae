// Whether the site stays usable while a large file is looked at, checked and added: how long other pages take, against the quiet site.
import { randomBytes } from "node:crypto";
import { mkdtempSync, openAsBlob, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import process from "node:process";
import { setTimeout as pause } from "node:timers/promises";
import { buildIfChanged } from "../../app/commands/start/build.mjs";
import { loadDemoIfEmpty } from "../../app/commands/start/demo.mjs";
import { choosePort } from "../../app/commands/start/port.mjs";
import { serve } from "../../app/commands/start/serve.mjs";
import { throwAwayDatabase } from "../database-server";
import { writeJobs } from "./intake-rows";
import { say } from "./say";

const pages = ["/today", "/jobs", "/units", "/repeats"];
const readers = 20;
const quietRounds = 8;
/** A person looks at a page for so long before asking for the next. Our own choice, as in tests/load/users.ts. */
const thinkMs = { least: 500, spread: 3000 };
const longestWorkMs = 30 * 60_000;

type Headers = Readonly<Record<string, string>>;

interface Site {
  readonly address: string;
  /** What the browser of each reader sends with every request; the first one's owner sends the file as well. */
  readonly people: readonly Headers[];
}

/** Builds and serves the site as users have it, on a throw-away database with a small company, and signs twenty people in. */
export async function filesStall(rows = 100_000): Promise<void> {
  await buildIfChanged(undefined);
  const given = process.env.DATABASE_URL;
  const folder = mkdtempSync(join(tmpdir(), "ohmsworth-stall-"));
  const database = await throwAwayDatabase();
  process.env.DATABASE_URL = database.url;
  process.env.OHMSWORTH_SECRET ??= randomBytes(32).toString("base64url"); // the site takes sessions that are signed with it
  const { migrateDatabase } = await import("@/db/migrate");
  const { closeDatabase } = await import("@/db/close-database");
  const { headersAs } = await import("../db/people/signed-in");
  const stop = new AbortController();
  try {
    await migrateDatabase(database.url);
    await loadDemoIfEmpty({ url: database.url, isEmpty: () => true }, { folder, size: 0.1, signal: stop.signal });
    const people: Headers[] = [];
    for (let reader = 0; reader < readers; reader++) people.push({ cookie: (await headersAs("owner")).cookie ?? "" });
    await closeDatabase();
    await whileServed(database.url, stop, (address) => measure({ address, people }, { folder, rows }));
  } finally {
    await closeDatabase();
    if (given === undefined) delete process.env.DATABASE_URL;
    else process.env.DATABASE_URL = given;
    await database.drop();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function whileServed(
  databaseUrl: string,
  stop: AbortController,
  work: (address: string) => Promise<void>,
): Promise<void> {
  const port = await choosePort(undefined);
  let announce: () => void = () => {};
  const listening = new Promise<void>((resolve) => {
    announce = resolve;
  });
  const served = serve({ port, development: false, databaseUrl, signal: stop.signal, announce });
  await Promise.race([listening, served]);
  try {
    await work(`http://127.0.0.1:${port}`);
  } finally {
    stop.abort();
    await served;
  }
}

async function measure(
  site: Site,
  { folder, rows }: { readonly folder: string; readonly rows: number },
): Promise<void> {
  await waits(site, rounds(2 * readers)); // the first answers of a page are slower
  const quiet = await waits(site, rounds(quietRounds * readers));
  const path = join(folder, "jobs.csv");
  await writeJobs(path, { rows });
  const draft = await send(site, path);
  const checking = await waits(site, worked(site, draft));
  await pressAdd(site, draft);
  const adding = await waits(site, worked(site, draft));
  say(`${readers} readers, quiet: half within, 95 % within, of ${quiet.length}`, inWords(quiet));
  for (const [what, during] of [["looked at and checked", checking] as const, ["added", adding] as const]) {
    say(`  while ${rows} rows are ${what}, of ${during.length}`, inWords(during));
    say("    95 % within, against the quiet site", `${(within(during, 0.95) / within(quiet, 0.95)).toFixed(2)} x`);
  }
}

type Going = () => Promise<boolean>;

/**
 * Twenty people at once, each looking at one page after the other for as long as it is to go on; whoever is sent to sign in has not seen the page. @returns milliseconds, the shortest first
 */
async function waits({ address, people }: Site, going: Going): Promise<readonly number[]> {
  const taken: number[] = [];
  const read = async (headers: Headers, reader: number): Promise<void> => {
    for (let looked = 0; await going(); looked++)
      for (const [place, page] of pages.entries()) {
        await pause(thinkMs.least + (((17 * reader + 7 * looked + 5 * place) % readers) / readers) * thinkMs.spread);
        const before = performance.now();
        const answer = await fetch(`${address}${page}`, { headers, redirect: "manual" });
        await answer.text();
        if (answer.status !== 200) throw new Error(`${page} answers ${answer.status}`);
        taken.push(performance.now() - before);
      }
  };
  await Promise.all(people.map(read));
  return taken.toSorted((a, b) => a - b);
}

function rounds(most: number): Going {
  let done = 0;
  return async () => done++ < most;
}

/** Until the work on the draft has ended. */
function worked(site: Site, draft: string): Going {
  const last = performance.now() + longestWorkMs;
  return async () => {
    if (performance.now() > last) throw new Error("The work on the file does not end.");
    const state: { next?: string } = await (
      await fetch(`${site.address}${draft}/state`, { headers: own(site) })
    ).json();
    return state.next === undefined;
  };
}

/** @returns the address of the draft */
async function send(site: Site, path: string): Promise<string> {
  const request = { method: "POST", body: await openAsBlob(path), headers: own(site) };
  const answer = await fetch(`${site.address}/files/upload?name=jobs.csv`, request);
  const { address }: { address?: string } = await answer.json();
  if (address === undefined) throw new Error(`The file was not taken: ${answer.status}`);
  return address;
}

/** What the browser of whoever takes the file in sends. */
function own({ address, people }: Site): Headers {
  return { ...people[0], origin: address };
}

/** Sends the form of the button as a browser without script does. */
async function pressAdd(site: Site, draft: string): Promise<void> {
  const address = `${site.address}${draft}/rows`;
  const page = await (await fetch(address, { headers: own(site) })).text();
  const form = [...page.matchAll(/<form[^>]*>.*?<\/form>/gs)]
    .map(([text]) => text)
    .find((text) => /Add [\d,]/.test(text));
  if (form === undefined) throw new Error("There is nothing to add.");
  const body = new FormData();
  for (const [field] of form.matchAll(/<input[^>]*>/g))
    body.set(attribute(field, "name") ?? "", attribute(field, "value") ?? "");
  const answer = await fetch(address, { method: "POST", body, redirect: "manual", headers: own(site) });
  if (answer.status !== 303) throw new Error(`Adding was not begun: ${answer.status}`);
}

function attribute(tag: string, name: string): string | undefined {
  return tag
    .match(new RegExp(`${name}="([^"]*)"`))?.[1]
    ?.replaceAll("&quot;", '"')
    .replaceAll("&amp;", "&");
}

function within(sorted: readonly number[], share: number): number {
  return sorted[Math.floor(sorted.length * share)] ?? Number.NaN;
}

function inWords(sorted: readonly number[]): string {
  return `${within(sorted, 0.5).toFixed(0)}, ${within(sorted, 0.95).toFixed(0)} ms`;
}
