// npm run soak -- log: the built site answers a walk on which names, numbers, serials and notes are stored, looked for, sent
// wrongly and made to fail, by every page, address and action; what it printed holds none of them, and what it answered
// tells nothing of its inside but a code that stands in the log.
import { spawn } from "node:child_process";
import { randomBytes } from "node:crypto";
import { join } from "node:path";
import process from "node:process";
import { setTimeout as pause } from "node:timers/promises";
import { Client } from "pg";
import { pageActs, routeActs } from "@/app/_people/route-acts";
import { siteAddress } from "@/db/site-role/site-address";
import { buildIfChanged } from "../../app/commands/start/build.mjs";
import { choosePort } from "../../app/commands/start/port.mjs";
import { throwAwayDatabase } from "../database-server";
import { csv, fileFolder, job, shopDocument, unit } from "../db/intake-files";
import { builtActions, callOf } from "./built-actions";
import { signInPeople } from "./sign-in-people";

const canaries = ["Quillfeather", "5550134", "CANARYSERIAL", "J-CANARY", "larkspur", "c4n4ryk3y"];
/** Statements, traces and places of the program; scripts of pages hold code of their own, so only what people are told is looked at. */
const inside =
  /Failed query|node_modules|\n\s+at .+:\d+:\d+|\bselect\b.+\bfrom\b.+\bjoin\b|relation "|42P01|\/home\/|DrizzleQueryError|DatabaseError/;
/** These have no place in a script of a page either. */
const failure = /Failed query|42P01|DrizzleQueryError|DatabaseError/;
const told: string[] = [];
/** Addresses for programs that failed and did not say so as a problem (RFC 9457). */
const wordless: string[] = [];
/** Pages and actions that failed, by the code that they told. */
const failedWith = new Map<string, string>();
let cookie = "";
const said = "Ms. Quillfeather of Larkspur Close, 5550134";

async function main(): Promise<number> {
  await buildIfChanged(undefined);
  const database = await throwAwayDatabase();
  process.env.DATABASE_URL = database.url;
  process.env.OHMSWORTH_SECRET = randomBytes(32).toString("base64url"); // the site takes sessions that are signed with it
  const { closeDatabase } = await import("@/db/close-database");
  try {
    await storeCanaries(database.url);
    const [owner = {}] = await signInPeople(1, ["owner"]);
    cookie = owner.cookie ?? "";
    await closeDatabase();
    const printed = await walked(database.url);
    const leaks = printed
      .split("\n")
      .filter((line) => canaries.some((canary) => line.toLowerCase().includes(canary.toLowerCase())));
    for (const line of leaks.slice(0, 10)) console.log(`LEAK ${line}`);
    const answers = printed.split("\n").filter((line) => line.includes('"what":"answer"'));
    const failures = answers.filter((line) => line.includes('"level":"error"')).length;
    console.log(
      `${answers.length} answers in the log, ${failures} of them failures; ${leaks.length} lines with a name, number, serial or note`,
    );
    const telling = told.filter(
      (text) => failure.test(text) || inside.test(text.replace(/<script[\s\S]*?<\/script>/g, "")),
    );
    for (const text of telling.slice(0, 3)) console.log(`TOLD ${text.slice(0, 500)}`);
    console.log(`${told.length} answers seen, ${telling.length} of them tell of the inside`);
    if (wordless.length > 0) console.log(`WORDLESS ${wordless.join(", ")}`);
    const lost = [...failedWith].filter(([code]) => !printed.includes(`"failure":"${code}"`));
    for (const [code, what] of lost) console.log(`NOT IN THE LOG ${code} ${what}`);
    console.log(`${failedWith.size} codes were told, ${lost.length} of them are not in the log`);
    return wordless.length === 0 &&
      lost.length === 0 &&
      failedWith.size > 0 &&
      leaks.length === 0 &&
      telling.length === 0 &&
      answers.length >= 10 &&
      failures > 0
      ? 0
      : 1;
  } finally {
    await closeDatabase();
    await database.drop();
  }
}

async function storeCanaries(url: string): Promise<void> {
  const { migrateDatabase } = await import("@/db/migrate");
  const { seedCatalogue } = await import("@/db/seed-catalogue");
  await migrateDatabase(url);
  await seedCatalogue();
  const files = fileFolder();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("CANARYSERIAL1")]));
  await files.load(csv([job("J-CANARY-1", "CANARYSERIAL1", { complaint: said })]));
  files.remove();
}

async function walked(ownerUrl: string): Promise<string> {
  const { prepareSiteRole } = await import("@/db/site-role/prepare-site-role");
  const { url: databaseUrl } = await prepareSiteRole(ownerUrl);
  const port = await choosePort(undefined);
  const site = `http://127.0.0.1:${port}`;
  const next = join("node_modules", "next", "dist", "bin", "next");
  const server = spawn(process.execPath, [next, "start", "--hostname", "127.0.0.1", "--port", String(port)], {
    env: { ...process.env, DATABASE_URL: databaseUrl, OHMSWORTH_LOG: "requests", OHMSWORTH_NIGHTLY: "off" },
  });
  let printed = "";
  for (const stream of [server.stdout, server.stderr]) stream.on("data", (text) => (printed += text));
  try {
    while (
      !(await fetch(`${site}/healthz`).then(
        (answer) => answer.ok,
        () => false,
      ))
    )
      await pause(200);
    await walk(site);
    await failing(site, ownerUrl);
    await pause(1000);
    return printed;
  } finally {
    const ended = new Promise((resolve) => server.once("exit", resolve));
    server.kill("SIGTERM");
    await ended;
  }
}

async function walk(site: string): Promise<void> {
  const words = encodeURIComponent(said);
  for (const path of [
    "/jobs/J-CANARY-1",
    `/jobs?words=${words}`,
    `/units?words=CANARYSERIAL1`,
    `/claims/for/J-CANARY-1`,
    `/${words}`,
    "/sheet/job/J-CANARY-1",
  ]) {
    await ask(`${site}${path}`);
  }
  await ask(`${site}/files/upload?name=${words}.csv`, {
    method: "POST",
    body: `job_number,complaint\nJ-CANARY-2,${said}\n`,
  });
  const key = { authorization: "Bearer c4n4ryk3y", "idempotency-key": "c4n4ryk3y", "content-type": "application/json" };
  await ask(`${site}/api/jobs`, {
    method: "POST",
    headers: key,
    body: JSON.stringify({ jobs: [{ job_number: "J-CANARY-3", complaint: said }] }),
  });
  await ask(`${site}/jobs/J-CANARY-1/photos`, {
    method: "POST",
    body: said,
    headers: { "content-type": "text/plain" },
  });
  await ask(`${site}/jobs/J-CANARY-1`, {
    method: "POST",
    body: said,
    headers: { "next-action": "7f".repeat(21), "content-type": "text/plain" },
  });
}

/** Nothing may be read any more but who is signed in: every page and every address for programs fails inside the database. */
async function failing(site: string, ownerUrl: string): Promise<void> {
  const owner = new Client({ connectionString: ownerUrl });
  await owner.connect();
  const { role } = siteAddress(ownerUrl);
  await owner.query(`revoke all on all tables in schema public from ${role}`);
  await owner.query(`grant all on people, sessions, credentials, second_factors, recovery_codes, shop to ${role}`);
  const at = (path: string) => `${site}${path.replaceAll("[number]", "J-CANARY-1").replaceAll(/\[\w+\]/g, "1")}`;
  for (const path of Object.keys(pageActs)) noteCode(path, await ask(at(path)));
  for (const action of builtActions()) {
    if (action.name.endsWith(" signOut")) continue; // nobody would be signed in for the next
    noteCode(action.name, await ask(at(action.page), callOf(action)));
  }
  for (const key of Object.keys(routeActs)) {
    if (!key.startsWith("GET ")) continue;
    const answer = await ask(at(key.slice("GET ".length)));
    if (answer?.status === 500 && answer.headers.get("content-type") !== "application/problem+json") wordless.push(key);
  }
  await owner.end();
}

/** The code of a failed page stands in it; what is found is kept under it. */
function noteCode(what: string, answer: Response | undefined): void {
  const [, code] = /\\?"digest\\?":\s*\\?"(\d+(?:@E\d+)?)/.exec(told.at(-1) ?? "") ?? [];
  if (code !== undefined) failedWith.set(code, what);
  else if (answer?.status === 500) failedWith.set("none", what);
}

async function ask(address: string, init: RequestInit = {}): Promise<Response | undefined> {
  const { origin } = new URL(address);
  const headers = { origin, "sec-fetch-site": "same-origin", cookie, ...(init.headers as Record<string, string>) }; // all calls here give them so
  const answer = await fetch(address, { ...init, headers }).catch(() => undefined);
  if (answer !== undefined) told.push(await answer.text());
  return answer;
}

main().then(
  (code) => process.exit(code),
  (error) => {
    console.error(error);
    process.exit(1);
  },
);
