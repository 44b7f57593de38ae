// Every address of the table is asked while the database refuses to read or write: what it answers says that it failed and
// with which code, and holds no SQL, no name of a table, no path and no trace.
import { createServer, type IncomingMessage, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { Client } from "pg";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { z } from "zod";
import { tellFailures } from "@/app/_http/tell-failures";
import { routeActs } from "@/app/_people/route-acts";
import { closeDatabase } from "@/db/close-database";
import { grantSiteRights } from "@/db/site-role/grant-site-rights";
import { siteAddress } from "@/db/site-role/site-address";
import { asDatabaseOwner, ownDatabaseUrl } from "../own-database";
import { csv, fileFolder, job, shopDocument, startAfresh, unit } from "./intake-files";
import { headersAs } from "./people/signed-in";

const files = fileFolder();
const { role } = siteAddress(ownDatabaseUrl());
const keys = Object.keys(routeActs) as (keyof typeof routeActs)[]; // the keys of the table, which it lists itself
const unbroken: readonly string[] = ["GET /healthz", "GET /readyz"]; // they say by design what is wrong
let headers: Record<string, string> = {};

beforeAll(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("A1")]));
  await files.load(csv([job("J1", "A1")]));
  headers = await headersAs("owner");
  tellFailures();
  await site.start();
});
afterAll(async () => {
  await site.stop();
  await mend();
  files.remove();
  await closeDatabase();
});

/** What the site may not read, the database refuses with a sentence that names it. */
async function refuse(...kept: readonly string[]): Promise<void> {
  await asDatabaseOwner(`revoke all on all tables in schema public from ${role}`);
  for (const table of kept) await asDatabaseOwner(`grant all on ${table} to ${role}`);
}

async function mend(): Promise<void> {
  const owner = new Client({ connectionString: ownDatabaseUrl() });
  await owner.connect();
  await grantSiteRights(owner, role).finally(() => owner.end());
}

let asked = 0;

/** The handlers as the web server serves them: one that throws is answered with status 500 and no word; where it compresses, the head goes out first. */
const site = (() => {
  const server = createServer((request, response) => {
    answer(request, response).catch(() => {
      response.statusCode = 500;
      if (asked++ % 2 === 0) response.writeHead(500);
      response.end();
    });
  });
  return {
    start: () => new Promise<void>((done) => server.listen(0, "127.0.0.1", done)),
    stop: () => new Promise((done) => server.close(done)),
    address: (path: string) => `http://127.0.0.1:${(server.address() as AddressInfo).port}${path}`, // it listens on a port
  };
})();

type Handler = (request: Request, context: { params: Promise<Record<string, string>> }) => Response | Promise<Response>;

async function answer(incoming: IncomingMessage, response: ServerResponse): Promise<void> {
  const key = String(incoming.headers["asked-for"]);
  const [method = "", path = ""] = key.split(" ");
  const handlers = (await import(`../../app${path}/route.ts`)) as Record<string, Handler>; // the test of guarded routes holds their form
  const body = method === "GET" ? {} : { body: JSON.stringify({ complaint: "It hums." }) };
  const sent = { ...headers, "content-type": "application/json", authorization: "", "idempotency-key": "k" };
  const sending = new Request(`http://localhost${addressOf(path)}`, { method, headers: sent, ...body });
  const params = Object.fromEntries(
    [...path.matchAll(/\[(\w+)\]/g)].map(({ 1: name = "" }) => [name, exampleOf(name)]),
  );
  const told = await handlers[method]?.(sending, { params: Promise.resolve(params) });
  const text = (await told?.text()) ?? "";
  response.writeHead(told?.status ?? 404, Object.fromEntries(told?.headers ?? []));
  response.end(text);
}

const exampleOf = (name: string) => ({ number: "J1", component: "drain_pump", claim: "1", version: "1" })[name] ?? "1";
const addressOf = (path: string) => path.replaceAll(/\[(\w+)\]/g, (_, name: string) => exampleOf(name));

async function ask(key: string): Promise<{ status: number; text: string; all: string }> {
  const [method = "", path = ""] = key.split(" ");
  const response = await fetch(site.address(addressOf(path)), { method, headers: { "asked-for": key } });
  const text = await response.text();
  return { status: response.status, text, all: `${[...response.headers].join("\n")}\n${text}` };
}

const problem = z.strictObject({
  type: z.string(),
  title: z.string().min(1),
  status: z.literal(500),
  detail: z.string().min(1),
  instance: z.string().regex(/^urn:uuid:[0-9a-f-]{36}$/),
  code: z.string().regex(/^[0-9a-f]{8}$/),
});
const inside =
  /Failed query|permission denied|42501|\bselect\b.*\bfrom\b|\binsert into\b|node_modules|\bat .+:\d+:\d+|\.tsx?\b|\/(home|work|tmp|usr|var)\/|DrizzleQueryError|postgres/i;

/** @returns whether it failed, which must be told as it ought to be */
async function failed(key: string): Promise<boolean> {
  const { status, text, all } = await ask(key);
  expect(all).not.toMatch(inside);
  if (status < 500) return false;
  expect(problem.safeParse(JSON.parse(text)).error).toBeUndefined();
  expect(all).toContain("application/problem+json");
  return true;
}

describe("while the database refuses everything", () => {
  beforeAll(() => refuse());
  const guarded = keys.filter((key) => routeActs[key] !== "anybody" && routeActs[key] !== "key");

  test.each(guarded)("%s fails, as it cannot know who asks, and tells nothing of the inside", async (key) => {
    expect(await failed(key)).toBe(true);
  });
});

describe("while the database refuses all but who is signed in", () => {
  const failing: string[] = [];
  beforeAll(() => refuse("people", "sessions", "credentials", "second_factors", "recovery_codes", "shop"));

  test.each(keys.filter((key) => !unbroken.includes(key)))("%s tells nothing of the inside", async (key) => {
    if (await failed(key)) failing.push(key);
  });

  test("most of them did fail", () => {
    expect(failing.length).toBeGreaterThan(25);
  });
});
