import { sql } from "drizzle-orm";
import { afterAll, beforeAll, expect, test } from "vitest";
import { mayCall, mayCallOnJob } from "@/app/_people/may-call";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { loadOpenJobs } from "@/db/queries/sheet-lists";
import { makeApiKey, revokeApiKey } from "@/db/writes/api-keys";
import { openJob } from "@/db/writes/sheets/open-job";
import { day } from "@/lib/calendar/day";
import { csv, fileFolder, job, shopDocument, startAfresh, unit } from "../intake-files";
import { headersAs } from "./signed-in";

const files = fileFolder();
const route = "GET /jobs/[number]/photos/[id]";

beforeAll(async () => {
  await startAfresh();
  await files.load(JSON.stringify({ ...shopDocument, demo: false }));
  await files.load(csv([unit("A1")]));
  await files.load(
    csv([job("J1", "A1", { technician: "Kit" }), job("J2", "A1", { technician: "Lou", completed_on: "2025-05-01" })]),
  );
  const open = {
    serial: "A-1",
    symptom: "will_not_drain",
    complaint: "",
    requestedOn: day("2025-06-01"),
    payer: "maker",
    callbackOf: undefined,
  } as const;
  for (const [jobNumber, technician] of [
    ["S1", "Kit"],
    ["S2", "Lou"],
    ["S3", undefined],
  ] as const)
    expect(await openJob({ ...open, jobNumber, technician })).toEqual({ kind: "opened" });
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const get = (headers: Record<string, string>) => new Request("http://localhost/", { headers });

async function status(headers: Record<string, string>, number: string): Promise<number> {
  const caller = await mayCallOnJob(get(headers), route, number);
  return caller.ok ? 200 : caller.response.status;
}

test("to a technician another's job is not there, and reads as one that never was", async () => {
  const [kit, lou, nameless] = [
    await headersAs("technician", "Kit"),
    await headersAs("technician", "Lou"),
    await headersAs("technician"),
  ];
  for (const [number, seen] of [
    ["J1", [200, 404, 404]],
    ["J2", [404, 200, 404]],
    ["S1", [200, 404, 404]],
    ["S2", [404, 200, 404]],
    ["S3", [200, 200, 200]],
    ["J9", [404, 404, 404]],
  ] as const)
    expect([await status(kit, number), await status(lou, number), await status(nameless, number)], number).toEqual(
      seen,
    );
  const answers = await Promise.all(["J2", "J9"].map((number) => mayCallOnJob(get(kit), route, number)));
  const texts = await Promise.all(answers.map((caller) => (caller.ok ? "" : caller.response.text())));
  expect(texts[0]?.replace("J2", "J9")).toBe(texts[1]);
  const mine = await readOnly((db) => loadOpenJobs(db, "Kit", { orNobodys: true }));
  expect(mine.map(({ jobNumber }) => jobNumber).sort()).toEqual(["S1", "S3"]);
});

test("an owner without a second factor takes no file that may name customers, once the company is a real one", async () => {
  const owner = await mayCall(get(await headersAs("owner")), "GET /jobs/jobs.csv");
  expect(owner.ok ? 200 : [owner.response.status, (await owner.response.json()).title]).toEqual([
    403,
    "A second factor is needed",
  ]);
  expect((await mayCall(get(await headersAs("reader")), "GET /jobs/jobs.csv")).ok).toBe(true);
});

test("what a phone kept for one person is not taken from another, and says so in a way that the phone knows", async () => {
  const headers = { ...(await headersAs("technician", "Kit")), "ohmsworth-person": "somebody else" };
  const request = new Request("http://localhost/", { method: "POST", headers });
  const caller = await mayCallOnJob(request, "POST /sheet/job/[number]/answers", "S1");
  expect(caller.ok ? {} : await caller.response.json()).toMatchObject({ status: 401, type: "/sheet#other-person" });
});

test("a key opens what it was made for, until its day or its end, and nothing that only people see", async () => {
  const made = (scope: "jobs" | "read", days: number) => makeApiKey({ name: "Sheets", scope, days, madeBy: "Oriel" });
  const [reads, sends] = [await made("read", 30), await made("jobs", 30)];
  const asks = async (
    key: string,
    what: "GET /jobs/jobs.csv" | "GET /files/draft/[id]/state" | "POST /files/upload",
  ) => {
    const method = what.startsWith("GET") ? "GET" : "POST";
    const headers = { authorization: `Bearer ${key}`, origin: "http://localhost", host: "localhost" };
    const caller = await mayCall(new Request("http://localhost/", { method, headers }), what);
    return caller.ok ? 200 : caller.response.status;
  };
  expect(await asks(reads.key, "GET /jobs/jobs.csv")).toBe(200);
  expect(await asks(reads.key, "GET /files/draft/[id]/state")).toBe(403);
  expect(await asks(reads.key, "POST /files/upload")).toBe(403);
  expect(await asks(sends.key, "GET /jobs/jobs.csv")).toBe(403);
  await revokeApiKey(reads.keyId);
  expect(await asks(reads.key, "GET /jobs/jobs.csv")).toBe(401);
  const old = await made("read", 30);
  await inTransaction((tx) => tx.rows(sql`update api_keys set expires_at = now() where key_id = ${old.keyId}`));
  expect(await asks(old.key, "GET /jobs/jobs.csv")).toBe(401);
});
