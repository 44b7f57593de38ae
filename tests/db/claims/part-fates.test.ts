import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadHeldParts } from "@/db/queries/held-parts";
import { loadMoneyDue } from "@/db/queries/money-today";
import { putBackOnShelf, recordPartFate } from "@/db/writes/claims/record-part-fate";
import { day } from "@/lib/calendar/day";
import type { FateEntry } from "@/lib/claims/recovery/part-fate";
import { fileFolder } from "../intake-files";
import { act, draftOf, send, startWithJobs } from "./claim-files";

const files = fileFolder();
const at = "2023-07-20T10:00:00Z";
const today = day("2023-07-20");
const scrapped: FateEntry = { fate: "scrapped", on: today, tag: "T-7", by: "Ana", reason: "" };
let claim = "";

/** Sent, and paid in full on 1 June: the part is to be kept for 30 days, through 1 July. */
beforeEach(async () => {
  await startWithJobs(files);
  claim = await draftOf("J1");
  await send(claim, day("2023-05-12"));
  const lines = [4150, 415, 6500].map((cents, index) => ({ line: index + 1, cents }));
  await act(claim, { what: "paid", on: day("2023-06-01"), reference: "CR-1", lines });
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const enter = (entry: FateEntry, line = 1) => recordPartFate({ claimNumber: claim, line }, { entry, today, at });
const listed = () => readOnly((db) => loadHeldParts(db, today));
const toGo = async () => (await readOnly((db) => loadMoneyDue(db, today))).partsToGo;

test("a part that was scrapped is gone from the shelf and from today’s list, with its tag, once however often it is entered", async () => {
  expect((await listed()).map(({ hold, gone }) => [hold.kind, gone])).toEqual([["may go", undefined]]);
  expect(await toGo()).toBe(1);
  expect(await enter(scrapped)).toEqual({ kind: "recorded" });
  expect(await enter(scrapped)).toEqual({ kind: "as it was" });
  expect((await listed()).map(({ gone }) => gone)).toEqual([scrapped]);
  expect(await toGo()).toBe(0);
  expect(await enter({ ...scrapped, fate: "sent back" })).toMatchObject({
    kind: "refused",
    sentence: expect.stringContaining("scrapped by Ana already"),
  });
});

test("before its time a part is scrapped only with a reason, and an entry is taken back by another", async () => {
  const early = { ...scrapped, on: day("2023-07-01") };
  expect(await enter(early)).toMatchObject({ kind: "refused" });
  expect(await enter({ ...early, reason: "Released by letter" })).toEqual({ kind: "recorded" });
  const back = { by: "Ben", reason: "It was another one", on: today, at };
  expect(await putBackOnShelf({ claimNumber: claim, line: 1 }, back)).toEqual({ kind: "recorded" });
  expect(await putBackOnShelf({ claimNumber: claim, line: 1 }, back)).toEqual({ kind: "as it was" });
  expect((await listed()).map(({ gone }) => gone)).toEqual([undefined]);
  expect(await enter(scrapped)).toEqual({ kind: "recorded" });
});

test("two people who enter one part at once: one is recorded, the other hears of it", async () => {
  const kinds = (await Promise.all([enter(scrapped), enter({ ...scrapped, fate: "sent back", by: "Ben" })])).map(
    ({ kind }) => kind,
  );
  expect(kinds.sort()).toEqual(["recorded", "refused"]);
});

test("what no payer asks for is refused in a sentence: labour, a claim nobody has, a day before it was sent", async () => {
  expect(await enter(scrapped, 3)).toMatchObject({ sentence: expect.stringContaining("asks for no part in line 3") });
  expect(await recordPartFate({ claimNumber: "C-0", line: 1 }, { entry: scrapped, today, at })).toMatchObject({
    sentence: "C-0 is no claim on file.",
  });
  expect(await enter({ ...scrapped, on: day("2023-05-11") })).toMatchObject({ kind: "refused" });
});
