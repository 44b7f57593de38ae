import { createHash } from "node:crypto";
import { sql } from "drizzle-orm";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { answerOnce, type OnceRequest } from "@/db/writes/answer-once";
import { makeApiKey, recogniseApiKey, revokeApiKey } from "@/db/writes/api-keys";
import { loadRecords } from "@/db/writes/load-records";
import type { JobRecord } from "@/lib/intake/records/read-job-records";
import { fileFolder, job, partLine, shopDocument, startAfresh, today } from "./intake-files";
import { stateOfData } from "./state-of-data";

const files = fileFolder();

beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const cells = (row: Readonly<Record<string, string | number>>) =>
  Object.fromEntries(Object.entries(row).map(([column, value]) => [column, String(value)]));
const records: readonly JobRecord[] = [
  { kind: "jobs", pointer: "/jobs/0", cells: cells(job("J1", "A1", { product_type: "front_load_washer" })) },
  { kind: "part-lines", pointer: "/jobs/0/part_lines/0", cells: cells(partLine("J1", 1)) },
];
const request = (text = "body", key = "k-1"): OnceRequest => ({
  route: "POST /api/jobs",
  key,
  bodyHash: createHash("sha256").update(text).digest("hex"),
});

/** What the route does: the load and its answer in one transaction. */
const send = (once = request(), given = records) =>
  answerOnce(once, async (store) => {
    let answer = { status: 500, body: {} as unknown };
    await loadRecords({
      records: given,
      sender: "Test program",
      mode: "add",
      today,
      async within(tx, result) {
        answer = { status: result.kind === "added" ? 201 : 422, body: { kind: result.kind } };
        await store(tx, answer);
      },
    });
    return answer;
  });

const batches = async () =>
  (await readOnly((db) => db.rows(sql`select from batches where file_name = 'Test program'`))).length;

test("the same request fifty times at once is done once; the others get its answer or are told to wait", async () => {
  const all = await Promise.all(Array.from({ length: 50 }, () => send()));
  expect(all.filter((answer) => answer.kind === "answered" && !answer.repeated)).toHaveLength(1);
  for (const answer of all) expect(["answered", "running"]).toContain(answer.kind);
  expect(await batches()).toBe(1);
  expect((await stateOfData()).jobs).toHaveLength(1);
  expect((await stateOfData()).part_lines).toHaveLength(1);
  expect(await send()).toEqual({ kind: "answered", answer: { status: 201, body: { kind: "added" } }, repeated: true });
  expect(await batches()).toBe(1);
});

test("the same key with another body is refused, also while the first runs", async () => {
  await send();
  expect(await send(request("another"))).toEqual({ kind: "other body" });
  expect(await batches()).toBe(1);
});

test("a run that fails stores neither answer nor jobs, and the key can be used again", async () => {
  const failing = answerOnce(request(), async (store) => {
    await inTransaction(async (tx) => {
      await tx.execute(sql`insert into product_types values ('kiln', 'Kiln')`);
      await store(tx, { status: 201, body: {} });
      throw new Error("The light went out.");
    });
    return { status: 201, body: {} };
  });
  await expect(failing).rejects.toThrow("The light went out.");
  expect(await readOnly((db) => db.rows(sql`select from product_types where key = 'kiln'`))).toEqual([]);
  expect(await send()).toMatchObject({ kind: "answered", repeated: false });
});

test("a run that died is taken over, and cannot store anything once it is", async () => {
  await expect(
    answerOnce(request(), async (store) => {
      await inTransaction((tx) => tx.execute(sql`update idempotency_keys set run_until = now() - interval '1 second'`));
      expect(await send()).toMatchObject({ kind: "answered", repeated: false });
      return await inTransaction(async (tx) => {
        await tx.execute(sql`insert into product_types values ('kiln', 'Kiln')`);
        await store(tx, { status: 201, body: {} });
        return { status: 201, body: {} };
      });
    }),
  ).rejects.toThrow("taken over");
  expect(await batches()).toBe(1);
  expect(await readOnly((db) => db.rows(sql`select from product_types where key = 'kiln'`))).toEqual([]);
});

test("a job whose part line is wrong comes in no part, and the place is named", async () => {
  const [first, line] = records;
  if (first === undefined || line === undefined) throw new Error("The records are above.");
  const result = await loadRecords({
    records: [first, { ...line, cells: { ...line.cells, quantity: "many" } }],
    sender: "Test program",
    mode: "add",
    today,
  });
  expect(result).toMatchObject({
    kind: "refused",
    report: { problems: [{ row: 2, column: "part-lines.quantity", value: "many" }] },
  });
  expect((await stateOfData()).jobs).toEqual([]);
});

test("a key opens until it is ended, and is kept as its hash only", async () => {
  const { keyId, key } = await makeApiKey({ name: "Scheduler", scope: "jobs", days: 30, madeBy: "Oriel" });
  expect(await recogniseApiKey(key)).toEqual({ keyId, name: "Scheduler", scope: "jobs" });
  expect(await recogniseApiKey(`${key}x`)).toBeUndefined();
  const [stored] = await readOnly((db) =>
    db.rows<{ row: string }>(sql`select to_jsonb(k)::text as row from api_keys k`),
  );
  expect(stored?.row).not.toContain(key);
  expect(await revokeApiKey(keyId)).toBe(true);
  expect(await recogniseApiKey(key)).toBeUndefined();
});
