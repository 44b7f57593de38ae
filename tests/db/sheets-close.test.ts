import { randomUUID } from "node:crypto";
import { sql } from "drizzle-orm";
import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { POST as sendAnswer } from "@/app/sheet/job/[number]/answers/route";
import { POST as sendClosing } from "@/app/sheet/job/[number]/close/route";
import { POST as sendPhoto } from "@/app/sheet/job/[number]/photos/route";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadJobRecord } from "@/db/queries/job-record";
import { loadSheetJob } from "@/db/queries/sheet-job";
import { recount } from "@/db/writes/recount";
import { type NewOpenJob, openJob } from "@/db/writes/sheets/open-job";
import { day } from "@/lib/calendar/day";
import { checkEvidence } from "@/lib/evidence/check-evidence";
import { csv, fileFolder, job, partLine, shopDocument, startAfresh, unit } from "./intake-files";
import { headersAs } from "./people/signed-in";
import { marked } from "./photos-hostile";

process.env.OHMSWORTH_TODAY = "2025-06-30";
const files = fileFolder();

let last = 0;
let number = "";
let signed: Record<string, string> = {};

beforeAll(async () => {
  await startAfresh();
  signed = await headersAs("technician", "Kit");
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("A1")]));
  await files.load(csv([job("J1", "A1")]));
  await files.load(csv([partLine("J1", 1)]));
});
beforeEach(async () => {
  number = `S${++last}`;
  expect(await openJob({ ...opened, jobNumber: number })).toEqual({ kind: "opened" });
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const opened = {
  serial: "a-1",
  symptom: "will_not_drain",
  complaint: "Stops with water in it.",
  requestedOn: day("2025-06-28"),
  technician: "Kit",
  payer: "maker",
  callbackOf: undefined,
} as const;
const context = (of: string) => ({ params: Promise.resolve({ number: of }) });

/** Closed jobs of the present number, and all jobs that are counted. */
async function counted() {
  const [row] = await readOnly((db) =>
    db.rows<{ own: number; cells: number }>(sql`
      select (select count(*)::integer from jobs where job_number = ${number}) as own, (select sum(jobs)::integer from job_cells) as cells`),
  );
  return { own: row?.own ?? 0, cells: row?.cells ?? 0 };
}
const record = async () => (await readOnly((db) => loadJobRecord(db, number)))?.record;

function winding(more: object = {}, sequence = 1) {
  return {
    id: randomUUID(),
    sequence,
    check: "pump_winding",
    time: 1,
    note: "",
    at: "2025-06-30T09:00:00-05:00",
    given: {
      kind: "reading",
      mode: "ohm",
      outcome: { kind: "open" },
      power: "off",
      pointA: "pump 1",
      pointB: "pump 2",
      isolated: true,
      sheetLow: 10,
      sheetHigh: 20,
      cautionsRead: true,
      ...more,
    },
  };
}

async function post(
  handler: (request: Request, context: { params: Promise<{ number: string }> }) => Promise<Response>,
  body: object | FormData,
  { to = number, key }: { readonly to?: string; readonly key?: string } = {},
) {
  const headers = key === undefined ? undefined : { "Idempotency-Key": key };
  const text = body instanceof FormData ? body : JSON.stringify(body);
  const response = await handler(
    new Request("http://localhost/", { method: "POST", body: text, headers: { ...signed, ...headers } }),
    context(to),
  );
  const { said, detail }: { said?: string; detail?: string } = await response.json();
  return { status: response.status, said, detail };
}

const closing = {
  causeNote: "Pump winding open.",
  correction: "Replaced the pump.",
  cause: "component",
  component: "drain_pump",
  failureMode: "winding_open",
  visits: 1,
  parts: [{ partNumber: "P-100", quantity: 1 }],
};

async function photo() {
  const form = new FormData();
  form.set("id", randomUUID());
  form.set("subject", "plate");
  form.set("file", new File([new Uint8Array(await marked("jpeg"))], "x.jpg"));
  return form;
}

describe("opening", () => {
  test("an open job counts nowhere", async () => {
    expect(await record()).toBeUndefined();
    expect(await counted()).toMatchObject({ own: 0 });
  });
  test.each<[string, Partial<NewOpenJob>]>([
    ["number is taken", { jobNumber: "J1" }],
    ["no such serial", { serial: "ZZ" }],
    ["no such symptom", { symptom: "not_cold" }],
    ["no such earlier job", { callbackOf: "J9" }],
  ])("refuses: %s", async (kind, part) => {
    expect(await openJob({ ...opened, jobNumber: "other", ...part })).toMatchObject({ kind });
  });
});

describe("answers", () => {
  test("the same answer sent five times at once is kept once; the same id with other words is refused", async () => {
    const answer = winding();
    const all = await Promise.all(Array.from({ length: 5 }, () => post(sendAnswer, answer)));
    expect(all.map(({ status }) => status)).toEqual([200, 200, 200, 200, 200]);
    expect(all.filter(({ said }) => said === "kept")).toHaveLength(1);
    const other = { ...answer, given: { ...answer.given, outcome: { kind: "short" } } };
    expect(await post(sendAnswer, other)).toMatchObject({ status: 422 });
    expect((await readOnly((db) => loadSheetJob(db, number)))?.answers).toHaveLength(1);
  });
  test.each([
    ["ohms with power on", { power: "powered_panels_closed" }],
    ["the wrong unit", { outcome: { kind: "number", value: 3, unit: "psi" } }],
    ["in circuit", { isolated: false }],
  ])("a reading that proves nothing is kept as record: %s", async (_, more) => {
    expect(await post(sendAnswer, winding(more))).toMatchObject({ status: 200 });
    await post(sendClosing, closing, { key: `${number} k` });
    const closed = await record();
    expect(closed?.readings).toHaveLength(1);
    expect(closed && checkEvidence(closed, []).items.find(({ key }) => key === "proof")?.state).toBe("missing");
  });
  test("names the place of what is wrong, and a live step without its cautions is not taken", async () => {
    expect((await post(sendAnswer, winding({ outcome: { kind: "number", unit: "ohm" } }))).detail).toContain(
      "given.outcome.value",
    );
    expect((await post(sendAnswer, winding({ power: "live", cautionsRead: false }))).detail).toContain("cautions");
    expect(await post(sendAnswer, winding(), { to: "nobody" })).toMatchObject({ status: 404 });
  });
});

describe("closing", () => {
  test("makes the job with readings in their order, photo, part at its price, and its counts, in one act", async () => {
    await post(sendAnswer, winding({ outcome: { kind: "number", value: 15, unit: "ohm" } }, 2));
    await post(sendAnswer, winding({}, 1));
    await post(sendPhoto, await photo());
    expect(await post(sendClosing, closing, { key: `${number} k1` })).toMatchObject({ status: 200, said: "closed" });
    const closed = await record();
    expect(closed?.readings.map(({ number, outcome }) => [number, outcome.kind])).toEqual([
      [1, "open"],
      [2, "number"],
    ]);
    expect(closed?.attachments.map(({ subject }) => subject)).toEqual(["plate"]);
    expect(closed?.partLines).toMatchObject([{ partNumber: "P-100", unitCost: { cents: 4150 } }]);
    expect(closed?.job).toMatchObject({ complaint: opened.complaint, completedOn: "2025-06-30", technician: "Kit" });
    const before = await counted();
    expect(before.own).toBe(1);
    await recount();
    expect(await counted()).toEqual(before);
  });
  test("fifty times at once with one key closes once; with another body or without a key it is refused", async () => {
    const all = await Promise.all(
      Array.from({ length: 50 }, () => post(sendClosing, closing, { key: `${number} k1` })),
    );
    expect(all.filter(({ status }) => status === 200).length).toBeGreaterThan(0);
    expect(all.every(({ status }) => status === 200 || status === 409)).toBe(true);
    expect(await post(sendClosing, closing, { key: `${number} k1` })).toMatchObject({ status: 200 });
    expect(await post(sendClosing, { ...closing, visits: 2 }, { key: `${number} k1` })).toMatchObject({ status: 422 });
    expect(await post(sendClosing, closing)).toMatchObject({ status: 400 });
    expect((await post(sendClosing, closing, { key: `${number} k2` })).detail).toContain("closed already");
    expect(await counted()).toMatchObject({ own: 1 });
  });
  test("a part without a price is asked for by its number, and nothing is stored", async () => {
    const unknown = { ...closing, parts: [{ partNumber: "Q-7", quantity: 2 }] };
    expect((await post(sendClosing, unknown, { key: `${number} a` })).detail).toContain("Q-7");
    expect(await counted()).toMatchObject({ own: 0 });
    const priced = { ...closing, parts: [{ partNumber: "Q-7", quantity: 2, unitCostCents: 990 }] };
    expect(await post(sendClosing, priced, { key: `${number} a` })).toMatchObject({ status: 200 });
  });
  test("a clock that was put back a year neither closes before the request nor harms", async () => {
    process.env.OHMSWORTH_TODAY = "2024-06-30";
    try {
      expect((await post(sendClosing, closing, { key: `${number} b` })).detail).toContain("clock");
    } finally {
      process.env.OHMSWORTH_TODAY = "2025-06-30";
    }
    const early = { ...winding(), at: "2019-01-01T00:00:00+00:00" };
    await post(sendAnswer, early);
    expect(await post(sendClosing, closing, { key: `${number} b` })).toMatchObject({ status: 200 });
  });
  test("what comes late from a phone becomes a reading of the closed job, and later files leave its story alone", async () => {
    await post(sendClosing, closing, { key: `${number} k1` });
    await post(sendAnswer, winding());
    await post(sendPhoto, await photo());
    const closed = await record();
    expect(closed?.readings).toHaveLength(1);
    expect(closed?.attachments).toHaveLength(1);
    await files.load(
      csv([job(number, "A1", { requested_on: "2025-06-28", completed_on: "2025-06-30", cause: "foreign_object" })]),
    );
    const [held] = await readOnly((db) =>
      db.rows(sql`select cause, cause_note from jobs where job_number = ${number}`),
    );
    expect(held).toEqual({ cause: "component", cause_note: closing.causeNote });
  });
});
