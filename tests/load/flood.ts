// npm run soak -- flood: one person asks for Repeats and for whole tables fifty at once and goes on asking, while another
// looks at pages one by one: how much longer those take than without the first, and how the first is answered.
import { randomBytes } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { parseArgs } from "node:util";
import { buildIfChanged } from "../../app/commands/start/build.mjs";
import { choosePort } from "../../app/commands/start/port.mjs";
import { serve } from "../../app/commands/start/serve.mjs";
import { stopSignal } from "../../app/commands/start/stop-signal.mjs";
import { makeCompany } from "./make-company";
import { signInPeople } from "./sign-in-people";
import { ask } from "./users";

const { values } = parseArgs({
  options: { jobs: { type: "string", default: "10000" }, views: { type: "string", default: "60" } },
});
const atOnce = 50;
/** Each of them is asked again so long after it was answered; those who wait as the answer says are no flood. */
const againMs = 1000;
/** Promised: 95 in 100 views of anybody else take no longer than this many times what they take otherwise. */
const mostSlower = 2;

type Headers = Readonly<Record<string, string>>;

async function main(): Promise<number> {
  const signal: AbortSignal = stopSignal();
  await buildIfChanged(signal);
  const { throwAwayDatabase } = await import("../database-server");
  const database = await throwAwayDatabase();
  process.env.DATABASE_URL = database.url;
  process.env.OHMSWORTH_SECRET = randomBytes(32).toString("base64url"); // the site takes sessions that are signed with it
  process.env.OHMSWORTH_LOG = "off";
  process.env.OHMSWORTH_NIGHTLY = "off";
  const { closeDatabase } = await import("@/db/close-database");
  const { prepareSiteRole } = await import("@/db/site-role/prepare-site-role");
  const folder = mkdtempSync(join(tmpdir(), "ohmsworth-flood-"));
  try {
    const company = await makeCompany({ url: database.url, folder, jobs: Number(values.jobs), signal });
    console.log(company.sentence);
    const [greedy = {}, patient = {}] = await signInPeople(2, ["owner"]);
    await closeDatabase();
    const { url } = await prepareSiteRole(database.url);
    return await serveAndFlood(url, { greedy, patient }, signal);
  } finally {
    await closeDatabase();
    await database.drop();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function serveAndFlood(
  databaseUrl: string,
  { greedy, patient }: { readonly greedy: Headers; readonly patient: Headers },
  outside: AbortSignal,
): Promise<number> {
  const port = await choosePort(undefined);
  const stop = new AbortController();
  outside.addEventListener("abort", () => stop.abort(), { once: true });
  let announce: () => void = () => {};
  const ready = new Promise<void>((resolve) => {
    announce = resolve;
  });
  const served = serve({ port, development: false, databaseUrl, signal: stop.signal, announce });
  await Promise.race([ready, served]);
  try {
    const site = `http://127.0.0.1:${port}`;
    await views(site, patient, 8); // all is loaded once
    const alone = await views(site, patient, Number(values.views));
    console.log(`fetched ahead of a click: ${await lookAhead(site, patient)}`);
    const flood = startFlood(site, greedy);
    await pause(500);
    const beside = await views(site, patient, Number(values.views));
    const answers = await flood.end();
    return told({ alone, beside, answers });
  } finally {
    stop.abort();
    await served;
  }
}

/** No view is asked for twice, since answers are kept: each has a period of its own. */
let asked = 0;
const places = ["/repeats?from=", "/jobs?from=", "/repeats/rates.csv?from=", "/repeats?by=model&from="];
function nextAddress(): string {
  asked += 1;
  const day = new Date(Date.UTC(2023, 0, 1 + (asked % 700))).toISOString().slice(0, 10);
  return `${places[asked % places.length]}${day}`;
}

/** @returns milliseconds of each */
async function views(site: string, headers: Headers, count: number): Promise<readonly number[]> {
  const times: number[] = [];
  for (let n = 0; n < count; n += 1) {
    const { status, ms } = await ask(`${site}${nextAddress()}`, headers);
    if (status !== 200) throw new Error(`a person who asks for one page at a time is answered ${status}`);
    times.push(ms);
  }
  return times;
}

/** What a browser fetches before somebody clicks has no limit, so it must not be the page. */
async function lookAhead(site: string, headers: Headers): Promise<string> {
  const ahead = { ...headers, rsc: "1", "next-router-prefetch": "1" };
  const answer = await fetch(`${site}/repeats?from=2020-01-01`, { headers: ahead });
  const text = await answer.text();
  return `${answer.status}, ${text.length} characters, ${/drain pump/i.test(text) ? "WITH" : "without"} what the page says`;
}

function startFlood(site: string, headers: Headers) {
  const statuses: number[] = [];
  let over = false;
  const one = async () => {
    while (!over) {
      statuses.push((await ask(`${site}${nextAddress()}`, headers)).status);
      await pause(againMs);
    }
  };
  const all = Array.from({ length: atOnce }, one);
  return {
    async end(): Promise<readonly number[]> {
      over = true;
      await Promise.all(all);
      return statuses;
    },
  };
}

interface Seen {
  readonly alone: readonly number[];
  readonly beside: readonly number[];
  readonly answers: readonly number[];
}

function told({ alone, beside, answers }: Seen): number {
  const at = (times: readonly number[], share: number) =>
    times.toSorted((a, b) => a - b)[Math.ceil(share * times.length) - 1] ?? Number.NaN;
  const words = (times: readonly number[]) =>
    `half within ${Math.round(at(times, 0.5))} ms, 95 in 100 within ${Math.round(at(times, 0.95))} ms`;
  const ratio = at(beside, 0.95) / at(alone, 0.95);
  console.log(`alone: ${words(alone)}`);
  console.log(`beside ${atOnce} at once by another person: ${words(beside)}: ${ratio.toFixed(2)} times`);
  const count = (status: number) => answers.filter((answer) => answer === status).length;
  const others = answers.length - count(200) - count(429);
  console.log(`that person: ${count(200)} answered, ${count(429)} turned away with 429, ${others} otherwise`);
  return ratio <= mostSlower && count(429) > 0 && others === 0 ? 0 : 1;
}

main().then(
  (code) => process.exit(code),
  (error) => {
    console.error(error);
    process.exit(1);
  },
);
