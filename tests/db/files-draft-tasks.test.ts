// The tasks that the site gives to a process of its own, on files in a draft.
import { createReadStream } from "node:fs";
import { readFile } from "node:fs/promises";
import { Readable } from "node:stream";
import { sql } from "drizzle-orm";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { keepNotes, openDraft, startDraft } from "@/app/files/_draft/open-draft";
import { onwardFrom, whereItStands } from "@/app/files/_draft/where-it-stands";
import { doTask } from "@/app/files/_work/do-task";
import type { FileTask } from "@/app/files/_work/work-state";
import { dropUpload, keepUpload, reportOf } from "@/app/files/uploads";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { takeBack } from "@/db/writes/take-back";
import { dirtyFile } from "@/e2e/foreign-files";
import { batchOf, fileFolder, shopDocument, startAfresh } from "./intake-files";

const files = fileFolder();
const kept: string[] = [];

beforeAll(async () => {
  await startAfresh();
  batchOf(await files.load(JSON.stringify(shopDocument)));
});
afterEach(async () => {
  for (const id of kept.splice(0)) await dropUpload(id);
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

async function chosen(body: Readable, fileName: string): Promise<string> {
  const upload = await keepUpload(Readable.toWeb(body) as ReadableStream<Uint8Array>, fileName); // the same stream, as the web names it
  kept.push(upload.id);
  await startDraft({ draftId: upload.id, fileName, fileBytes: upload.bytes, fileSha256: upload.sha256 });
  return upload.id;
}

async function done(id: string, task: FileTask) {
  expect(await doTask(id, task, { onProgress: () => {}, signal: new AbortController().signal })).toBe(true);
  const draft = await openDraft(id);
  if (draft === undefined) throw new Error("the draft is gone");
  return draft;
}

/** Counts of a dry run: new, changed, already here, held back, no record, and all. */
async function checkedRows(id: string): Promise<readonly number[]> {
  const { notes } = await done(id, "check");
  if (notes.checked === undefined || !("report" in notes.checked))
    throw new Error(`not checked: ${JSON.stringify(notes.unreadable ?? notes.guess?.problems)}`);
  const { rowsNew, rowsChanged, rowsSame, rowsHeld, rowsRefused, rowsTotal } = notes.checked.report;
  return [rowsNew, rowsChanged, rowsSame, rowsHeld, rowsRefused, rowsTotal];
}

describe("a file of another program", () => {
  test("goes from a look to a load with a correction, is remembered, and is taken back", async () => {
    const id = await chosen(Readable.from([dirtyFile("office.csv").buffer]), "office.csv");
    const looked = await done(id, "look");
    expect(whereItStands(looked)).toBe("look");
    expect(looked.notes.seen).toMatchObject({
      rows: 13,
      form: { encoding: "windows-1252", delimiter: ";", headerRow: 2 },
    });
    const { matching } = looked;
    if (matching === undefined) throw new Error("no matching was guessed");
    const words = { ...matching.words, component: { pump: "drain_pump", brd: "control_board" } };
    const columns = matching.columns.map((column) =>
      column.source === "Fault found" ? { ...column, target: "cause" } : column,
    );
    await keepNotes(id, {}, { step: "match", matching: { ...matching, columns, words } });
    expect(await checkedRows(id)).toEqual([9, 0, 0, 1, 3, 13]);
    const report = (await readFile(reportOf(id), "utf8")).trim().split("\r\n");
    expect(report).toHaveLength(2);
    expect(report[1]).toMatch(/^X-4409,Closed,.*31-Feb-26.*,René,12,Date completed,/);

    await keepNotes(id, { corrections: [{ column: "Date completed", text: "28-Apr-26", rows: [12] }] });
    expect(await checkedRows(id)).toEqual([10, 0, 0, 0, 3, 13]);
    const added = await done(id, "add");
    const batch = added.notes.added ?? 0;
    expect(onwardFrom(added)).toBe(`/files/${batch}`);
    const [note] = await readOnly((db) =>
      db.rows(
        sql`select raw, taken from cell_notes where batch_id = ${batch} and note = 'Corrected by hand before the load.'`,
      ),
    );
    expect(note).toEqual({ raw: "31-Feb-26", taken: "28-Apr-26" });

    const next = await chosen(Readable.from([dirtyFile("office-2.csv", "Y").buffer]), "office-2.csv");
    const known = await done(next, "look");
    expect(whereItStands(known), "a header that came before leaves nothing to ask").toBe("rows");
    expect(known.notes.checked).toMatchObject({ kind: "checked", report: { rowsNew: 9, rowsHeld: 1, rowsRefused: 3 } });

    expect((await takeBack(batch)).kind).toBe("taken back");
  });

  test("a stopped look leaves the draft as it was", async () => {
    const id = await chosen(Readable.from([dirtyFile("stopped.csv", "Z").buffer]), "stopped.csv");
    const stop = new AbortController();
    stop.abort();
    await doTask(id, "add", { onProgress: () => {}, signal: stop.signal }).catch(() => false);
    const [jobs] = await readOnly((db) =>
      db.rows<{ rows: number }>(sql`select count(*)::integer as rows from jobs where job_number like 'Z-%'`),
    );
    expect(jobs?.rows).toBe(0);
  });
});

// Open Repair data, see tests/reference/SOURCES.md: nobody wrote these records for this program.
test("618 real repair records go through the steps with what a person answers on the pages, and every row has one fate", async () => {
  const id = await chosen(createReadStream("tests/reference/data/openrepair_appliances_with_age.csv"), "repairs.csv");
  const { matching, notes } = await done(id, "look");
  if (matching === undefined || notes.guess === undefined) throw new Error("no matching was guessed");
  const open = notes.guess.words.filter(({ confidence }) => confidence === "guess");
  const words: Record<string, Record<string, string>> = { ...matching.words };
  for (const { target, word } of open)
    words[target] = { ...words[target], [word.toLowerCase()]: target === "product_type" ? "other_equipment" : "" };
  const lacking = notes.guess.problems.filter(({ about }) => about === "needed column");
  const constants = Object.fromEntries(lacking.map(({ target }) => [target, target === "maker" ? "Not stated" : ""]));
  await keepNotes(id, {}, { step: "match", matching: { ...matching, words, constants } });
  const counts = await checkedRows(id);
  expect(counts.slice(0, -1).reduce((sum, rows) => sum + rows, 0)).toBe(618);
  expect(counts.at(-1)).toBe(618);
  expect(counts[0]).toBeGreaterThan(500);
});
