import { readdirSync, readFileSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { contentPolicy, guardContent } from "@/app/_http/content-policy";
import config from "@/next.config";

const headersOf = async (source: string): Promise<ReadonlyMap<string, string>> => {
  const groups = (await config.headers?.()) ?? [];
  const found = groups.find((group) => group.source === source)?.headers ?? [];
  return new Map(found.map(({ key, value }) => [key.toLowerCase(), value]));
};

test("every answer asks for encryption for at least a year, is taken for what it says, and tells others nothing of its address", async () => {
  const headers = await headersOf("/:path*");
  const age = Number(/max-age=(\d+)/.exec(headers.get("strict-transport-security") ?? "")?.[1]);
  expect(age).toBeGreaterThanOrEqual(365 * 86_400);
  expect(headers.get("x-content-type-options")).toBe("nosniff");
  expect(headers.get("referrer-policy")).toBe("same-origin");
  expect(config.poweredByHeader).toBe(false);
});

/** They hold nothing of anybody, or give what another of these answers gives. */
const kept = [
  "app/api/jobs/schema/route.ts",
  "app/claims/claim-schema.json/route.ts",
  "app/files/columns/[kind]/route.ts",
  "app/repeats/[component]/before-after/[file]/route.ts",
  "app/repeats/[component]/compare/[file]/route.ts",
];

// Pages read the session, so Next itself makes them "no-store"; what answers by a handler of ours has to say so.
test("no browser keeps what an address of ours answers, but for schemas", () => {
  const handlers = readdirSync("app", { recursive: true, encoding: "utf8" })
    .map((path) => join("app", path).replaceAll("\\", "/"))
    .filter((path) => path.endsWith("/route.ts"));
  expect(handlers.length).toBeGreaterThan(20);
  const texts = new Map(handlers.map((path) => [path, readFileSync(path, "utf8")]));
  const read = [...texts].filter(([, text]) =>
    /export (async )?function GET|export const GET|export \{.*GET/.test(text),
  );
  const silent = read.filter(([, text]) => !/cache-control": "(private, )?no-store"|csvResponse\(/i.test(text));
  expect(silent.map(([path]) => path).filter((path) => !kept.includes(path))).toEqual([]);
  expect([...texts].filter(([, text]) => /max-age=[1-9]/.test(text)).map(([path]) => path)).toEqual([]);
});

const rulesOf = (policy: string) =>
  new Map(
    policy.split(";").map((rule) => {
      const [name = "", ...values] = rule.trim().split(" ");
      return [name, values.join(" ")];
    }),
  );

test("pages load nothing from elsewhere, hold no plug-in, stand in no frame, and send forms nowhere else; what people upload may do nothing", async () => {
  const policy = rulesOf(contentPolicy("bm9uY2U=", { development: false }));
  expect(policy.get("default-src")).toBe("'self'");
  for (const none of ["object-src", "base-uri", "frame-ancestors"]) expect(policy.get(none)).toBe("'none'");
  for (const self of ["form-action", "connect-src", "worker-src"]) expect(policy.get(self)).toBe("'self'");
  expect([...policy.values()].join(" ")).not.toMatch(/https?:|\*/);
  const uploaded = (await headersOf("/jobs/:number/photos/:id")).get("content-security-policy") ?? "";
  expect(rulesOf(uploaded)).toEqual(
    new Map([
      ["default-src", "'none'"],
      ["sandbox", ""],
    ]),
  );
});

test("scripts run by the nonce of their answer only, styles stand in files, in elements with the nonce or in attributes", () => {
  const policy = rulesOf(contentPolicy("bm9uY2U=", { development: false }));
  expect(policy.get("script-src")).toBe("'self' 'nonce-bm9uY2U=' 'strict-dynamic'");
  expect(policy.get("style-src")).toBe("'self' 'nonce-bm9uY2U='");
  expect(policy.get("style-src-attr")).toBe("'unsafe-inline'");
});

/** What the program behind it was told, and what went out. */
const server = createServer((request, response) => {
  response.end(request.headers["content-security-policy"]);
});
let stopGuarding = () => {};
beforeAll(async () => {
  stopGuarding = guardContent({ development: false });
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
});
afterAll(async () => {
  stopGuarding();
  await new Promise((done) => server.close(done));
});

test("each answer has a nonce of its own, and one that came with the request is thrown away", async () => {
  const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`; // it listens on a port
  const forged = { "content-security-policy": "script-src 'nonce-Zm9yZ2Vk'" };
  const answers = await Promise.all(Array.from({ length: 20 }, () => fetch(address, { headers: forged })));
  const policies = answers.map(({ headers }) => headers.get("content-security-policy") ?? "");
  expect(await Promise.all(answers.map((answer) => answer.text()))).toEqual(policies);
  const nonces = policies.map((policy) => /'nonce-([A-Za-z0-9+/]{22}==)'/.exec(policy)?.[1]);
  expect(new Set(nonces).size).toBe(20);
  expect(nonces).not.toContain(undefined);
  expect(policies.join()).not.toContain("Zm9yZ2Vk");
});
