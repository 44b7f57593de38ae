import { sql } from "drizzle-orm";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { POST } from "@/app/api/jobs/route";
import { exampleRequest } from "@/app/files/sending/words";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { makeApiKey, revokeApiKey } from "@/db/writes/api-keys";
import { takeBack } from "@/db/writes/take-back";
import { batchOf, csv, fileFolder, job, shopDocument, startAfresh, unit } from "./intake-files";

const files = fileFolder();
const forJobs = { scope: "jobs", days: 30, madeBy: "Oriel" } as const;
let key = "";

beforeAll(async () => {
  await startAfresh();
  batchOf(await files.load(JSON.stringify(shopDocument)));
  batchOf(await files.load(csv([unit("A1")])));
  ({ key } = await makeApiKey({ ...forJobs, name: "the dispatch program" }));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const line = { part_number: "P-100", component: "drain_pump", quantity: 1, unit_cost: 41.5 };

interface Sending {
  readonly once?: string | undefined;
  readonly bearer?: string | undefined;
  readonly type?: string;
}

function send(body: unknown, { once, bearer = key, type = "application/json" }: Sending = {}): Promise<Response> {
  const headers = new Headers({ "Content-Type": type });
  if (bearer !== "") headers.set("Authorization", `Bearer ${bearer}`);
  if (once !== undefined) headers.set("Idempotency-Key", once);
  const text = typeof body === "string" ? body : JSON.stringify(body);
  return POST(new Request("http://127.0.0.1/api/jobs", { method: "POST", headers, body: text }));
}

async function told(response: Response) {
  return { status: response.status, type: response.headers.get("content-type"), body: await response.json() };
}

async function jobsCalled(number: string): Promise<number> {
  const [found] = await readOnly((db) =>
    db.rows<{ rows: number }>(sql`select count(*)::integer as rows from jobs where job_number = ${number}`),
  );
  return found?.rows ?? 0;
}

test("a job with a part line is added as a load that can be taken back", async () => {
  const answer = await told(await send({ jobs: [{ ...job("H-1", "A1"), part_lines: [line] }] }, { once: "first" }));
  expect(answer).toMatchObject({ status: 201, body: { rows: { total: 2, new: 2, changed: 0, same: 0 } } });
  expect(await jobsCalled("H-1")).toBe(1);
  expect((await takeBack(answer.body.load)).kind).toBe("taken back");
  expect(await jobsCalled("H-1")).toBe(0);
});

describe("sent twice, done once (draft-ietf-httpapi-idempotency-key-header-07)", () => {
  const body = { jobs: [job("H-2", "A1")] };

  test("fifty at a time have one effect: each is answered alike, or told that the first is still running", async () => {
    const answers = await Promise.all(
      Array.from({ length: 50 }, async () => told(await send(body, { once: "fifty" }))),
    );
    const done = answers.filter(({ status }) => status === 201);
    expect(done.length).toBeGreaterThan(0);
    expect(answers.filter(({ status }) => status !== 201 && status !== 409)).toEqual([]);
    expect(new Set(done.map((answer) => answer.body.load)).size).toBe(1);
    expect(await jobsCalled("H-2")).toBe(1);
  });

  test("later it is answered as before, and with another body refused", async () => {
    const first = await told(await send(body, { once: "fifty" }));
    expect(first).toMatchObject({ status: 201, body: { rows: { new: 1 } } });
    const other = await told(await send({ jobs: [job("H-3", "A1")] }, { once: "fifty" }));
    expect(other).toMatchObject({
      status: 422,
      type: "application/problem+json",
      body: { title: expect.stringContaining("another body") },
    });
    expect(await jobsCalled("H-3")).toBe(0);
  });

  test("the same job under a new Idempotency-Key changes nothing", async () => {
    expect(await told(await send(body, { once: "anew" }))).toMatchObject({
      status: 200,
      body: { rows: { new: 0, changed: 0 } },
    });
  });
});

test.each([
  ["no key", { bearer: "", once: "a" }, {}, 401, "No key"],
  ["a key that was never made", { bearer: "ohm_nothing", once: "a" }, {}, 401, "not in use"],
  ["no Idempotency-Key", {}, {}, 400, "No Idempotency-Key"],
  ["an Idempotency-Key of 201 characters", { once: "x".repeat(201) }, {}, 400, "No Idempotency-Key"],
  ["a body that is called text", { once: "a", type: "text/plain" }, {}, 415, "not called JSON"],
  ["a body that is no JSON", { once: "a" }, "{jobs", 400, "not JSON"],
  ["1,001 jobs", { once: "a" }, { jobs: Array.from({ length: 1001 }, () => ({})) }, 413, "too large"],
  ["10 MB and a byte", { once: "a" }, " ".repeat(10_000_001), 413, "too large"],
] as const)("%s is refused as a problem document", async (_, how, body, status, title) => {
  const answer = await told(await send(body, how));
  expect(answer).toMatchObject({
    status,
    type: "application/problem+json",
    body: { status, title: expect.stringContaining(title) },
  });
  expect(answer.body.detail).not.toBe("");
});

test("an ended key opens nothing", async () => {
  const { keyId, key: other } = await makeApiKey({ ...forJobs, name: "an old program" });
  await revokeApiKey(keyId);
  expect((await send({ jobs: [job("H-4", "A1")] }, { bearer: other, once: "z" })).status).toBe(401);
});

test("places that are wrong are named by JSON Pointers, and nothing of the request is added", async () => {
  const bad = { ...job("H-5", "A1", { completed_on: "2023-02-30" }), part_lines: [line, { ...line, quantity: 0 }] };
  const answer = await told(await send({ jobs: [job("H-6", "A1"), bad] }, { once: "wrong" }));
  expect(answer.status).toBe(422);
  const places = answer.body.problems.map(({ pointer }: { pointer: string }) => pointer);
  expect(places).toContain("/jobs/1/completed_on");
  expect(places).toContain("/jobs/1/part_lines/1/quantity");
  expect(await jobsCalled("H-6")).toBe(0);
});

test("a return that no line of the request answers to is refused at its place", async () => {
  const returned = { ...job("H-7", "A1"), part_lines: [line, { ...line, quantity: -2 }] };
  const answer = await told(await send({ jobs: [returned] }, { once: "returned" }));
  expect([answer.status, answer.body.problems]).toEqual([
    422,
    [expect.objectContaining({ pointer: "/jobs/0/part_lines/1/quantity" })],
  ]);
  expect(await jobsCalled("H-7")).toBe(0);
});

test("the example on the page is taken as it stands", async () => {
  const body = /-d '(.*)'$/s.exec(exampleRequest)?.[1] ?? "";
  const document = JSON.parse(body);
  const answer = await told(await send(document, { once: "example" }));
  expect(answer).toMatchObject({ status: 201 });
});
