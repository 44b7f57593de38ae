// Whether the site stays usable while a large file is looked at, checked and added: how long other pages take, against the quiet site.
import { spawn } from "node:child_process";
import { mkdtempSync, openAsBlob, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { writeJobs } from "./intake-rows";
import { say } from "./say";

const pages = ["/today", "/jobs", "/units", "/repeats"];
const quietRounds = 25;
const longestStartMs = 15 * 60_000;
const longestWorkMs = 30 * 60_000;

/** Builds and serves the site as users have it, on a throw-away database with a small company. */
export async function filesStall(rows = 100_000): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "ohmsworth-stall-"));
  const port = await freePort();
  const server = spawn(process.execPath, ["e2e/server.mjs"], {
    env: { ...process.env, PORT: String(port), OHMSWORTH_TODAY: "2026-10-31" },
    stdio: ["ignore", "ignore", "inherit"],
  });
  const ended = new Promise<void>((resolve) => server.once("exit", () => resolve()));
  const site = `http://127.0.0.1:${port}`;
  try {
    await Promise.race([answering(site), ended.then(() => Promise.reject(new Error("The site did not start.")))]);
    await waits(site, rounds(3)); // the first answers of a page are slower
    const quiet = await waits(site, rounds(quietRounds));
    const path = join(folder, "jobs.csv");
    await writeJobs(path, { rows });
    const draft = await send(site, path);
    const checking = await waits(site, worked(site, draft));
    await pressAdd(site, draft);
    const adding = await waits(site, worked(site, draft));
    say(`other pages, quiet: half within, 95 % within, of ${quiet.length}`, inWords(quiet));
    for (const [what, during] of [["looked at and checked", checking] as const, ["added", adding] as const]) {
      say(`  while ${rows} rows are ${what}, of ${during.length}`, inWords(during));
      say("    95 % within, against the quiet site", `${(within(during, 0.95) / within(quiet, 0.95)).toFixed(2)} x`);
    }
  } finally {
    server.kill("SIGTERM");
    await ended;
    rmSync(folder, { recursive: true, force: true });
  }
}

type Going = () => Promise<boolean>;

/** Asks for one page after the other, each as a person would, for as long as it is to go on. @returns milliseconds, the shortest first */
async function waits(site: string, going: Going): Promise<readonly number[]> {
  const taken: number[] = [];
  while (await going()) {
    for (const page of pages) {
      const before = performance.now();
      const answer = await fetch(`${site}${page}`);
      await answer.text();
      if (!answer.ok) throw new Error(`${page} answers ${answer.status}`);
      taken.push(performance.now() - before);
    }
  }
  return taken.toSorted((a, b) => a - b);
}

function rounds(most: number): Going {
  let done = 0;
  return async () => done++ < most;
}

/** Until the work on the draft has ended. */
function worked(site: string, draft: string): Going {
  const last = performance.now() + longestWorkMs;
  return async () => {
    if (performance.now() > last) throw new Error("The work on the file does not end.");
    const state: { next?: string } = await (await fetch(`${site}${draft}/state`)).json();
    return state.next === undefined;
  };
}

/** @returns the address of the draft */
async function send(site: string, path: string): Promise<string> {
  const answer = await fetch(`${site}/files/upload?name=jobs.csv`, { method: "POST", body: await openAsBlob(path) });
  const { address }: { address?: string } = await answer.json();
  if (address === undefined) throw new Error(`The file was not taken: ${answer.status}`);
  return address;
}

/** Sends the form of the button as a browser without script does. */
async function pressAdd(site: string, draft: string): Promise<void> {
  const address = `${site}${draft}/rows`;
  const page = await (await fetch(address)).text();
  const form = [...page.matchAll(/<form[^>]*>.*?<\/form>/gs)]
    .map(([text]) => text)
    .find((text) => /Add [\d,]/.test(text));
  if (form === undefined) throw new Error("There is nothing to add.");
  const body = new FormData();
  for (const [field] of form.matchAll(/<input[^>]*>/g))
    body.set(attribute(field, "name") ?? "", attribute(field, "value") ?? "");
  const answer = await fetch(address, { method: "POST", body, redirect: "manual", headers: { Origin: site } });
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

async function answering(site: string): Promise<void> {
  for (const last = performance.now() + longestStartMs; performance.now() < last; await pause(500))
    if (
      await fetch(`${site}/today`).then(
        ({ ok }) => ok,
        () => false,
      )
    )
      return;
  throw new Error("The site does not answer.");
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once("error", reject);
    probe.listen(0, "127.0.0.1", () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === "object" && address !== null ? address.port : 0));
    });
  });
}
