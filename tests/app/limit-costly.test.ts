// A server whose answers take as long as a test wants: who may have how many of them at once, and what the others are told.
import { createHmac } from "node:crypto";
import { createServer, type IncomingMessage, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { setTimeout as pause } from "node:timers/promises";
import { afterAll, afterEach, beforeAll, expect, test, vi } from "vitest";
import { z } from "zod";
import { guardContent } from "@/app/_http/content-policy";
import { failureHeader } from "@/app/_http/tell-failures";
import { costlyFiles, costlyKind, longFiles } from "@/app/_limits/costly-addresses";
import { limitCostly } from "@/app/_limits/limit-costly";
import { whoAsks } from "@/app/_limits/who-asks";
import { noteWhoseSession } from "@/app/_limits/whose-sessions";
import { routeActs } from "@/app/_people/route-acts";
import { sessionCookieName } from "@/app/_people/session-cookie";

const secret = "a secret of this test and of nothing else";
vi.stubEnv("OHMSWORTH_SECRET", secret);

/** What a browser sends in this session. */
function cookieOf(mark: string, signedWith = secret): string {
  const seal = createHmac("sha256", signedWith).update(mark).digest("base64");
  return `theme=dark; ${sessionCookieName()}=${encodeURIComponent(`${mark}.${seal}`)}`;
}

/** What the server has begun and not answered yet; each is answered when the test says so, or at once. */
const inHand: (() => void)[] = [];
let atOnce = true;

async function work(_: IncomingMessage, response: ServerResponse): Promise<void> {
  if (!atOnce) await new Promise<void>((resolve) => inHand.push(resolve));
  response.setHeader("Content-Type", "text/html");
  response.end("a page");
}

const server = createServer(work);
const ends: (() => void)[] = [];
let site = "";
beforeAll(async () => {
  ends.push(
    guardContent({ development: false }),
    limitCostly({ atOnce: 1, waiting: 8, patienceMs: 5000, leftBehindMs: { least: 500, most: 2000 } }),
  );
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  site = `http://127.0.0.1:${(server.address() as AddressInfo).port}`; // it listens on a port
});
afterAll(async () => {
  vi.unstubAllEnvs();
  for (const end of ends) end();
  await new Promise((done) => server.close(done));
});
afterEach(() => {
  atOnce = true;
});

async function ask(path: string, headers: Record<string, string>) {
  const answer = await fetch(`${site}${path}`, { headers });
  return { status: answer.status, headers: answer.headers, text: await answer.text() };
}

const person = (mark: string) => ({ cookie: cookieOf(mark), accept: "text/html" });

test("of fifty at once one is served and eight wait, the others are answered 429; another person finds no more than that one before them", async () => {
  atOnce = false;
  const statuses: number[] = [];
  const flood = Array.from({ length: 50 }, async () => {
    statuses.push((await ask("/repeats", person("greedy"))).status);
  });
  await vi.waitFor(() => expect(statuses).toHaveLength(41), { timeout: 10_000 });
  expect(statuses).toEqual(Array(41).fill(429));
  expect(inHand).toHaveLength(1);
  const beside = ask("/repeats", person("patient"));
  await vi.waitFor(() => expect(inHand).toHaveLength(2), { timeout: 10_000 });
  inHand.pop()?.();
  expect((await beside).status).toBe(200);
  for (let served = 0; served < 9; served += 1) {
    await vi.waitFor(() => expect(inHand).toHaveLength(1), { timeout: 10_000 });
    inHand.pop()?.();
  }
  await Promise.all(flood);
  expect(statuses.slice(41)).toEqual(Array(9).fill(200));
});

test("all sessions of one person stand in one line, and what nobody signed stands in that of its address", async () => {
  for (const mark of ["desk", "phone"]) noteWhoseSession(mark, "the same person");
  const lineOf = (headers: Record<string, string>) =>
    whoAsks({ headers: { "ohmsworth-peer": "10.0.0.7", ...headers } });
  expect(lineOf({ cookie: cookieOf("desk") })).toBe("person the same person");
  expect(lineOf({ cookie: cookieOf("phone") })).toBe("person the same person");
  expect(lineOf({ cookie: cookieOf("another") })).toBe("person another");
  expect(lineOf({ cookie: cookieOf("another", "guessed") })).toBe("address 10.0.0.7");
  expect(lineOf({ authorization: "Bearer one" })).not.toBe(lineOf({ authorization: "Bearer two" }));
  expect(lineOf({})).toBe("address 10.0.0.7");
});

const problem = z.strictObject({
  type: z.literal("about:blank"),
  title: z.string().min(1),
  status: z.literal(429),
  detail: z.string().min(1),
  instance: z.string().regex(/^urn:uuid:[0-9a-f-]{36}$/),
  code: z.string().regex(/^[0-9a-f]{8}$/),
});

async function refused(path: string, headers: Record<string, string>) {
  atOnce = false;
  const all = Array.from({ length: 12 }, () => ask(path, headers));
  const { status, ...found } = await Promise.race(all);
  expect(status).toBe(429);
  expect(found.headers.get("retry-after")).toMatch(/^[1-9]\d*$/);
  expect(found.headers.get("cache-control")).toBe("no-store");
  atOnce = true;
  await vi.waitFor(() => expect(inHand).toHaveLength(1));
  inHand.pop()?.();
  await Promise.all(all);
  return found;
}

test("a program is told so as a problem whose code is the one in the log", async () => {
  const { text, headers } = await refused("/parts/parts.csv", { authorization: "Bearer k" });
  expect(headers.get("content-type")).toBe("application/problem+json");
  expect(problem.parse(JSON.parse(text)).code).toBe(headers.get(failureHeader)?.slice(0, 8));
});

test("a person is told in words and led back to what was asked for, whatever stands in its address", async () => {
  const { text, headers } = await refused(`/jobs?words="><script>alert(1)</script>&x`, person("words"));
  expect(headers.get("content-type")).toBe("text/html; charset=utf-8");
  expect(text).not.toMatch(/<script|"">/);
  expect(text).toContain(`href="/jobs?`);
  expect(text).toContain(headers.get(failureHeader)?.slice(0, 8));
  const nonce = /'nonce-([^']+)'/.exec(headers.get("content-security-policy") ?? "")?.[1];
  expect(text).toContain(`<style nonce="${nonce}">`);
});

test("whoever goes away leaves their place in line, and what they left behind counts as theirs for a while", async () => {
  atOnce = false;
  const going = new AbortController();
  const gone = Array.from({ length: 9 }, () =>
    fetch(`${site}/claims`, { headers: person("leaves"), signal: going.signal }).catch(() => "gone"),
  );
  await vi.waitFor(() => expect(inHand).toHaveLength(1));
  going.abort();
  expect(await Promise.all(gone)).toEqual(Array(9).fill("gone"));
  let next = ask("/claims", person("leaves"));
  await vi.waitFor(async () => {
    const soon = await Promise.race([next, pause(300)]);
    if (soon !== undefined) next = ask("/claims", person("leaves")); // the server had not seen yet that they were gone
    expect(soon).toBeUndefined();
  }, 10_000);
  expect(inHand).toHaveLength(1);
  inHand.pop()?.();
  await vi.waitFor(() => expect(inHand).toHaveLength(1), { timeout: 5000 });
  inHand.pop()?.();
  expect((await next).status).toBe(200);
});

const kind = (method: string, url: string, headers = {}) => costlyKind({ method, url, headers });

test("pages and files that read the whole company have a limit, what is small, looked at ahead or changes something has none", () => {
  for (const path of ["/repeats", "/repeats/drain_pump?by=age", "/claims/C-1/packet", "/jobs/"])
    expect(kind("GET", path), path).toBe("view");
  for (const path of ["/claims/C-1/packet.pdf", "/repeats/drain_pump/table.csv", "/jobs/jobs.csv"])
    expect(kind("HEAD", path), path).toBe("view");
  expect(kind("GET", "/claims/packets.zip?chosen=C-1")).toBe("long");
  for (const path of [
    "/healthz",
    "/sign-in",
    "/jobs/J-1/photos/1",
    "/_next/static/chunks/repeats.js",
    "/sheet/job/J-1",
  ])
    expect(kind("GET", path), path).toBeUndefined();
  expect(kind("POST", "/repeats")).toBeUndefined();
  expect(kind("GET", "/repeats", { rsc: "1", "next-router-prefetch": "1" })).toBeUndefined();
  expect(kind("GET", "/repeats", { "next-router-prefetch": "1" })).toBe("view");
  expect(kind("GET", "/repeats", { rsc: "1" })).toBe("view");
  const tables = Object.keys(routeActs).filter((key) => /^GET .*\.(csv|pdf|zip)$/.test(key));
  expect(tables.filter((key) => ![...costlyFiles, ...longFiles].some((costly) => costly === key))).toEqual([]);
});
