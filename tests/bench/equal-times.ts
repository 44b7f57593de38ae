// Whether the time that the built site takes tells that an address is known here, or that a number is another's and not
// nobody's. Asked in turns, one at a time; printed are medians and their ratio.
import { randomBytes } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { sql } from "drizzle-orm";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { migrateDatabase } from "@/db/migrate";
import { seedCatalogue } from "@/db/seed-catalogue";
import { prepareSiteRole } from "@/db/site-role/prepare-site-role";
import { buildIfChanged } from "../../app/commands/start/build.mjs";
import { loadDemoIfEmpty } from "../../app/commands/start/demo.mjs";
import { choosePort } from "../../app/commands/start/port.mjs";
import { serve } from "../../app/commands/start/serve.mjs";
import { throwAwayDatabase } from "../database-server";
import { headersAs, somebody } from "../db/people/signed-in";
import { builtActions } from "../load/built-actions";
import { median } from "./median";
import { say } from "./say";

const technician = "Nobody Else";

/** @param rounds  how often each of the two is asked */
export async function benchEqualTimes(rounds = 40): Promise<void> {
  const stop = new AbortController();
  await buildIfChanged(stop.signal);
  const database = await throwAwayDatabase();
  const folder = mkdtempSync(join(tmpdir(), "ohmsworth-times-"));
  Object.assign(process.env, {
    DATABASE_URL: database.url,
    OHMSWORTH_SECRET: randomBytes(32).toString("base64url"),
    OHMSWORTH_LOG: "off",
    OHMSWORTH_NIGHTLY: "off",
  });
  try {
    await migrateDatabase(database.url);
    await seedCatalogue();
    await loadDemoIfEmpty({ url: database.url, isEmpty: () => true }, { folder, size: 0.1, signal: stop.signal });
    const emails: string[] = [];
    for (let n = 0; n <= rounds; n += 1) emails.push((await somebody("reader")).email);
    const { cookie = "" } = await headersAs("technician", technician);
    const numbers = await readOnly((db) =>
      db.rows<{ number: string }>(sql`select job_number as number from jobs order by job_id limit ${rounds + 1}`),
    );
    await closeDatabase();
    const site = await served((await prepareSiteRole(database.url)).url, stop.signal);
    await compare("a wrong password, known address / unknown", rounds, (n) => [
      () => trySigningIn(site, emails[n] ?? ""),
      () => trySigningIn(site, `nobody-${n}@nowhere.example`),
    ]);
    for (const place of ["/jobs/[number]", "/jobs/[number]/photos/1"]) {
      const at = (number: string) => () => view(`${site}${place.replace("[number]", number)}`, cookie);
      await compare(`${place}, another's / nobody's`, rounds, (n) => [
        at(numbers[n]?.number ?? ""),
        at(`J-99${n.toString().padStart(3, "0")}`),
      ]);
    }
  } finally {
    stop.abort();
    await closeDatabase();
    await database.drop();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function served(databaseUrl: string, signal: AbortSignal): Promise<string> {
  const port = await choosePort(undefined);
  await new Promise<void>((announce, fail) => {
    serve({ port, development: false, databaseUrl, signal, announce }).catch(fail);
  });
  return `http://127.0.0.1:${port}`;
}

type Asked = () => Promise<void>;

/** The first round only warms; who comes first changes from round to round. */
async function compare(what: string, rounds: number, pair: (round: number) => readonly [Asked, Asked]): Promise<void> {
  const times: [number[], number[]] = [[], []];
  for (let round = 0; round <= rounds; round += 1) {
    for (const which of round % 2 === 0 ? ([0, 1] as const) : ([1, 0] as const)) {
      const began = performance.now();
      await pair(round)[which]();
      if (round > 0) times[which].push(performance.now() - began);
    }
  }
  const [first, second] = [median(times[0]), median(times[1])];
  say(what, `${first.toFixed(1)} / ${second.toFixed(1)} ms: ${(first / second).toFixed(3)} (wanted: 0.8 to 1.2)`);
}

async function trySigningIn(site: string, email: string): Promise<void> {
  const action = builtActions().find(({ name }) => name.endsWith("app/sign-in/actions.ts signIn"));
  if (action === undefined) throw new Error("the built site has no action for signing in");
  const body = new FormData();
  body.append("_1_email", email);
  body.append("_1_password", "not this one, nor any");
  body.append("_1_to", "/today");
  body.append("0", JSON.stringify([{ problem: "$undefined", email: "" }, "$K1"]));
  const headers = { "next-action": action.id, accept: "text/x-component", origin: site };
  const answer = await fetch(`${site}/sign-in`, { method: "POST", headers, body });
  const text = await answer.text();
  if (!text.includes("do not belong together")) throw new Error(`signing in was answered ${answer.status}: ${text}`);
}

async function view(address: string, cookie: string): Promise<void> {
  const answer = await fetch(address, { headers: { cookie } });
  await answer.arrayBuffer();
  if (answer.status !== 404) throw new Error(`${address} was answered ${answer.status}`);
}
