import { createHash } from "node:crypto";
import { sql } from "drizzle-orm";
import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { GET } from "@/app/jobs/[number]/photos/[id]/route";
import { POST } from "@/app/jobs/[number]/photos/route";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { loadAttachment } from "@/db/queries/attachment";
import { bringBack, removeAttachment } from "@/db/writes/photos/remove-attachment";
import { csv, fileFolder, job, shopDocument, startAfresh } from "./intake-files";
import { headersAs } from "./people/signed-in";
import { marked, pngBomb, polyglot } from "./photos-hostile";

const files = fileFolder();

let signed: Record<string, string> = {};

beforeAll(async () => {
  signed = await headersAs("manager");
});
beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify({ ...shopDocument, timeZone: "America/Chicago" }));
  await files.load(
    csv([
      job("J1", "A1", { product_type: "front_load_washer" }),
      job("J2", "A2", { product_type: "front_load_washer" }),
    ]),
  );
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

async function send(
  bytes: Buffer | undefined,
  fields: Readonly<Record<string, string>> = { subject: "plate" },
  number = "J1",
) {
  const body = new FormData();
  for (const [name, value] of Object.entries(fields)) body.set(name, value);
  if (bytes !== undefined) body.set("file", new File([new Uint8Array(bytes)], "plate.jpg"));
  const request = new Request("http://localhost/jobs/J1/photos", {
    method: "POST",
    body,
    headers: { ...signed, Accept: "application/json" },
  });
  const response = await POST(request, { params: Promise.resolve({ number }) });
  const { said, detail }: { said?: string; detail?: string } = await response.json();
  return { status: response.status, said, detail };
}

const stored = () =>
  readOnly((db) =>
    db.rows<{ id: string; job: string; subject: string; caption: string; taken: string | null; hash: string }>(sql`
      select a.attachment_id::text as id, j.job_number as job, a.subject, a.caption, a.stored_sha256 as hash,
        to_char(a.taken_at at time zone 'UTC', 'YYYY-MM-DD HH24:MI') as taken
      from attachments a join jobs j using (unit_id, job_id) order by 1`),
  );
const only = async () => {
  const [one, ...more] = await stored();
  if (one === undefined || more.length > 0)
    throw new Error(`one photo expected, and one is stored and ${more.length} more`);
  return one;
};

test("a photo is taken in once, however often it is sent, and once more on another job", async () => {
  const picture = await marked("jpeg");
  expect(await send(picture, { subject: "plate", caption: " Rear\u0007plate " })).toMatchObject({
    status: 200,
    said: "Added.",
  });
  expect(await send(picture, { subject: "meter" })).toMatchObject({
    status: 200,
    said: expect.stringMatching(/here already, as “Rating plate/),
  });
  expect(await only()).toMatchObject({ subject: "plate", caption: "Rear plate" });
  await send(picture, { subject: "plate" }, "J2");
  expect((await stored()).map(({ job: number }) => number).sort()).toEqual(["J1", "J2"]);
});

test("sent twice at the same moment it is still one", async () => {
  const picture = await marked("jpeg");
  const answers = await Promise.all([send(picture), send(picture), send(picture)]);
  expect(answers.map(({ status }) => status)).toEqual([200, 200, 200]);
  await only();
});

// D10: 5 March 2025 10:15 is 16:15 UTC in Chicago (standard time), and 04:45 UTC five and a half hours east.
test("a camera's clock is read in its own zone, or else in the shop's", async () => {
  await send(await marked("png"));
  expect((await only()).taken).toBe("2025-03-05 16:15");
  await startOver();
  await send(await marked("png", "+05:30"));
  expect((await only()).taken).toBe("2025-03-05 04:45");
});

async function startOver() {
  const { id } = await only();
  await removeAttachment({ jobNumber: "J1", id }, "test");
}

test("what is wrong is said, and nothing is stored", async () => {
  const picture = await marked("jpeg");
  expect(await send(undefined)).toMatchObject({ status: 400, detail: "Choose a photo first." });
  expect(await send(picture, { subject: "" })).toMatchObject({ status: 400, detail: "Choose what the picture shows." });
  expect(await send(picture, { subject: "plate", caption: "x".repeat(501) })).toMatchObject({
    status: 400,
    detail: expect.stringMatching(/longer than 500/),
  });
  expect(await send(pngBomb())).toMatchObject({
    status: 422,
    detail: expect.stringMatching(/^plate.jpg has 50000 × 50000 pixels/),
  });
  expect(await send(Buffer.alloc(16_000_000))).toMatchObject({ status: 413 });
  expect(await send(picture, { subject: "plate" }, "J9")).toMatchObject({ status: 404 });
  expect(await stored()).toEqual([]);
});

test("a form from another site is turned away", async () => {
  const request = new Request("http://localhost/jobs/J1/photos", {
    method: "POST",
    headers: { "Sec-Fetch-Site": "cross-site" },
  });
  expect((await POST(request, { params: Promise.resolve({ number: "J1" }) })).status).toBe(403);
});

test("a PDF is taken for a receipt and nothing else, and is handed out as a download that can do nothing", async () => {
  const paper = Buffer.from("%PDF-1.7\n1 0 obj << /Type /Catalog >> endobj\n%%EOF\n");
  expect(await send(paper, { subject: "plate" })).toMatchObject({ status: 422 });
  expect(await send(paper, { subject: "receipt" })).toMatchObject({ status: 200 });
  const { id } = await only();
  const { headers } = await GET(new Request("http://localhost/", { headers: signed }), {
    params: Promise.resolve({ number: "J1", id }),
  });
  expect(headers.get("content-disposition")).toMatch(/^attachment/);
  expect(headers.get("content-security-policy")).toContain("sandbox");
});

test("the received bytes are never handed out", async () => {
  const received = await polyglot();
  await send(received);
  const { id, hash } = await only();
  const response = await GET(new Request("http://localhost/", { headers: signed }), {
    params: Promise.resolve({ number: "J1", id }),
  });
  const bytes = Buffer.from(await response.arrayBuffer());
  expect([response.headers.get("content-type"), response.headers.get("x-content-type-options")]).toEqual([
    "image/jpeg",
    "nosniff",
  ]);
  expect(bytes.includes("<script")).toBe(false);
  // P3: the hash that is printed is that of the bytes that are handed out.
  expect(createHash("sha256").update(bytes).digest("hex")).toBe(hash);
});

test("taken off and brought back, a photo is as it was", async () => {
  await send(await marked("jpeg"), { subject: "meter", caption: "119 V" });
  const before = await only();
  const place = { jobNumber: "J1", id: before.id };
  const bytes = await readOnly((db) => loadAttachment(db, "J1", before.id));
  expect(await removeAttachment(place, "Ann")).toEqual({ kind: "removed" });
  expect(await stored()).toEqual([]);
  expect(await removeAttachment(place, "Ann")).toEqual({ kind: "not there" });
  expect(await bringBack({ ...place, jobNumber: "J2" })).toBe(false);
  expect(await bringBack(place)).toBe(true);
  expect(await only()).toEqual(before);
  expect(await readOnly((db) => loadAttachment(db, "J1", before.id))).toEqual(bytes);
  expect(await bringBack(place)).toBe(false);
  await expect(removeAttachment(place, " ")).rejects.toThrow(RangeError);
});

test("a photo taken off more than 30 days ago is gone at the next taking off", async () => {
  await send(await marked("jpeg"));
  const { id } = await only();
  await removeAttachment({ jobNumber: "J1", id }, "Ann");
  await inTransaction((tx) => tx.execute(sql`update removed_attachments set removed_at = now() - interval '31 days'`));
  await send(await marked("png"));
  await removeAttachment({ jobNumber: "J1", id: (await only()).id }, "Ann");
  expect(await bringBack({ jobNumber: "J1", id })).toBe(false);
});

// P3: the store itself refuses bytes that are not as many as it says; a flipped byte shows in the printed hash.
test("a flipped byte no longer has the hash that is kept beside it", async () => {
  await send(await marked("jpeg"));
  const { id, hash } = await only();
  await inTransaction((tx) =>
    tx.execute(sql`update attachments set content = set_byte(content, 100, get_byte(content, 100) # 1)`),
  );
  const found = await readOnly((db) => loadAttachment(db, "J1", id));
  expect(
    createHash("sha256")
      .update(found?.content ?? "")
      .digest("hex"),
  ).not.toBe(hash);
});
