// The process that works on a file: how it ends, and what the draft then says.
import { Readable } from "node:stream";
import { sql } from "drizzle-orm";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openDraft, startDraft } from "@/app/files/_draft/open-draft";
import { beginTask } from "@/app/files/_work/begin-task";
import { stopWork, workOn } from "@/app/files/_work/file-work";
import { dropUpload, keepUpload } from "@/app/files/uploads";
import { asActor } from "@/db/actor";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { dirtyFile } from "@/e2e/foreign-files";
import { batchOf, csv, fileFolder, shopDocument, startAfresh, unit } from "./intake-files";

const files = fileFolder();
const kept: string[] = [];

beforeAll(async () => {
  await startAfresh();
  batchOf(await files.load(JSON.stringify(shopDocument)));
});
afterAll(async () => {
  for (const id of kept) await dropUpload(id);
  files.remove();
  await closeDatabase();
});

async function chosen(fileName: string, content: Buffer = dirtyFile(fileName).buffer): Promise<string> {
  const body = Readable.toWeb(Readable.from([content])) as ReadableStream<Uint8Array>; // the same stream, as the web names it
  const upload = await keepUpload(body, fileName);
  kept.push(upload.id);
  await startDraft({ draftId: upload.id, fileName, fileBytes: upload.bytes, fileSha256: upload.sha256 });
  return upload.id;
}

async function ended(id: string) {
  while (workOn(id) !== undefined) await new Promise((resolve) => setTimeout(resolve, 50));
  return (await openDraft(id))?.notes;
}

test("a file is looked at in a process of its own, one task at a time for each draft", async () => {
  const id = await chosen("apart.csv");
  expect(beginTask(id, "look")).toBe(true);
  expect(beginTask(id, "look"), "a second one while the first is running").toBe(false);
  expect(await ended(id)).toMatchObject({ seen: { rows: 13 }, ours: false });
});

test("work that is stopped says so in the draft, and can be begun again", async () => {
  const id = await chosen("stopped.csv");
  beginTask(id, "look");
  stopWork(id);
  expect((await ended(id))?.broken).toEqual({ task: "look", sentence: "You stopped it." });
  expect(beginTask(id, "look")).toBe(true);
  const notes = await ended(id);
  expect(notes?.broken).toBeUndefined();
  expect(notes?.seen?.rows).toBe(13);
});

test("a process that fails leaves a sentence", async () => {
  const id = await chosen("failing.csv");
  await dropUpload(id);
  beginTask(id, "look");
  expect((await ended(id))?.broken).toMatchObject({
    task: "look",
    sentence: expect.stringContaining("ended with an error"),
  });
});

test("three files are worked on two at a time, and all are done", async () => {
  const ids = await Promise.all(["one.csv", "two.csv", "three.csv"].map((name) => chosen(name)));
  for (const id of ids) beginTask(id, "look");
  expect(
    ids.map((id) => workOn(id)?.progress.words).filter((words) => words === "Waiting for another file"),
  ).toHaveLength(1);
  for (const id of ids) expect((await ended(id))?.seen?.rows).toBe(13);
});

test("what a process adds is in the change log under the name of whoever asked for it", async () => {
  const id = await chosen("units.csv", Buffer.from(csv([unit("A1"), unit("A2")])));
  for (const task of ["look", "check", "add"] as const) {
    expect(asActor("Kim at the desk", () => beginTask(id, task))).toBe(true);
    expect((await ended(id))?.broken).toBeUndefined();
  }
  const [entry] = await readOnly((db) =>
    db.rows(
      sql`select by, what, rows::integer as rows from change_log where table_name = 'batches' order by change_id desc limit 1`,
    ),
  );
  expect(entry).toEqual({ by: "Kim at the desk", what: "added", rows: 1 });
});
