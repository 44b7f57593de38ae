import { randomUUID } from "node:crypto";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadClaimLife } from "@/db/queries/claim-life";
import { day } from "@/lib/calendar/day";
import type { ClaimAct } from "@/lib/claims/life/claim-act";
import { fileFolder } from "../intake-files";
import { act, draftOf, send, startWithJobs, stored } from "./claim-files";

const files = fileFolder();
beforeEach(() => startWithJobs(files));
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const paid: Extract<ClaimAct, { what: "paid" }> = {
  what: "paid",
  on: day("2023-07-01"),
  reference: "CR-1",
  lines: [{ line: 1, cents: 1_000 }],
};
const eventsOf = async (claim: string) => (await readOnly((db) => loadClaimLife(db, claim)))?.events ?? [];

test("the same sending fifty times at once is sent once, and a late repetition gets the first answer", async () => {
  const claim = await draftOf("J1");
  const same = { key: randomUUID(), seenVersion: 1 };
  const all = await Promise.all(Array.from({ length: 50 }, () => send(claim, day("2023-05-12"), same)));
  for (const { kind } of all) expect(["recorded", "running"]).toContain(kind);
  expect(all.filter(({ kind }) => kind === "recorded").length).toBeGreaterThanOrEqual(1);
  expect((await eventsOf(claim)).map((event) => event.act.what)).toEqual(["built", "sent"]);
  expect(await send(claim, day("2023-05-12"), same)).toMatchObject({ kind: "recorded", version: 2 });
  expect(await send(claim, day("2023-05-13"), same)).toEqual({ kind: "key used" });
  expect(await stored(claim)).toMatchObject({ submission: 1, version: 2 });
});

test("the same payment fifty times at once is posted once", async () => {
  const claim = await draftOf("J1");
  await send(claim, day("2023-05-12"));
  const same = { key: randomUUID(), seenVersion: 2 };
  await Promise.all(Array.from({ length: 50 }, () => act(claim, paid, same)));
  expect(await stored(claim)).toMatchObject({ paid_cents: "1000", version: 3 });
});

test("fifty different payments over one seen version: one is posted, the others are shown both versions", async () => {
  const claim = await draftOf("J1");
  await send(claim, day("2023-05-12"));
  const all = await Promise.all(
    Array.from({ length: 50 }, (_, index) => act(claim, { ...paid, reference: `CR-${index}` }, { seenVersion: 2 })),
  );
  expect(all.filter(({ kind }) => kind === "recorded")).toHaveLength(1);
  const stale = all.find(({ kind }) => kind === "stale");
  expect(stale).toMatchObject({ seenVersion: 2, now: { version: 3, state: "short-paid", what: "paid", by: "Ana" } });
  expect(await stored(claim)).toMatchObject({ paid_cents: "1000", version: 3 });
});

test("two people who start the same claim get the same draft", async () => {
  const [one, other] = await Promise.all([draftOf("J1"), draftOf("J1")]);
  expect(one).toBe(other);
});
