import { sql } from "drizzle-orm";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { findClaimsThatDisagree } from "@/db/queries/claims-that-disagree";
import { loadMoneyFacts } from "@/db/queries/money-recovery";
import { loadWordingVersions } from "@/db/queries/payer-wordings";
import { decideLine } from "@/db/writes/money/decide-line";
import { keepRemittance } from "@/db/writes/money/keep-remittance";
import { postRemittance } from "@/db/writes/money/post-remittance";
import { readRemittance } from "@/db/writes/money/read-remittance";
import { setWording } from "@/db/writes/money/set-wording";
import { undoRemittance } from "@/db/writes/money/undo-remittance";
import { day } from "@/lib/calendar/day";
import { act, draftOf, send, startWithJobs, stored } from "../claims/claim-files";
import { fileFolder } from "../intake-files";

const files = fileFolder();
const today = day("2023-07-10");
const at = "2023-07-10T09:00:00Z";
let claims: string[] = [];

beforeEach(async () => {
  await startWithJobs(files, 4);
  claims = [];
  for (const job of ["J1", "J2", "J3", "J4"]) {
    const claim = await draftOf(job);
    await send(claim, day("2023-05-12"));
    claims.push(claim);
  }
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const asKept = (text: string) =>
  ({
    fileName: "credit.csv",
    content: Buffer.from(text),
    payer: "Hearth-Wick",
    reference: "CR-9",
    paidOn: day("2023-07-08"),
    currency: "USD",
    by: "Ana",
    at,
    today,
  }) as const;
const keep = (text: string) => keepRemittance(asKept(text));

/** Kept, its columns taken as they were guessed, and read. */
async function readList(text: string): Promise<number> {
  const kept = await keep(text);
  if (kept.kind !== "kept") throw new Error(JSON.stringify(kept));
  await confirm(kept.remittanceId);
  return kept.remittanceId;
}

async function confirm(remittanceId: number): Promise<void> {
  const [list] = await readOnly((db) =>
    db.rows<{ columns: never }>(sql`select columns from remittances where remittance_id = ${remittanceId}`),
  );
  if (list === undefined) throw new Error("no list");
  await readRemittance({ remittanceId, columns: list.columns, by: "Ana", today });
}

const linesOf = (id: number) =>
  readOnly((db) =>
    db.rows<{ row: number; fate: string; sentence: string; reason: string | null }>(
      sql`select row, fate, sentence, reason from remittance_lines where remittance_id = ${id} order by row`,
    ),
  );
const fates = async (id: number) => (await linesOf(id)).map(({ row, fate }) => `${row} ${fate}`);
async function post(id: number) {
  const [list] = await readOnly((db) =>
    db.rows<{ version: number }>(sql`select version from remittances where remittance_id = ${id}`),
  );
  return await postRemittance({ remittanceId: id, seenVersion: list?.version ?? 0, by: "Ana", at });
}

const euros = (cents: number) => (cents / 100).toFixed(2);
const askedOf = async (claim: string | undefined) => Number((await stored(claim ?? "")).claimed_cents);

async function list(): Promise<string> {
  const asked = await askedOf(claims[0]);
  return [
    "Claim no,Job,Serial,Amount paid,Remark",
    `${claims[0]},,,${euros(asked)},`,
    `${claims[1]},,,${euros(asked - 1000)},LABOR REDUCED 12`,
    `,J3,,0.00,POP MISSING`,
    `X-999,,,44.10,`,
    `${claims[3]},,,abc,`,
    "",
  ].join("\n");
}

test("every line of a list is posted, waits or lies in the tray, and the claims stand where their events say", async () => {
  const id = await readList(await list());
  expect(await fates(id)).toEqual(["2 ready", "3 ready", "4 ready", "5 tray", "6 unreadable"]);
  expect((await linesOf(id))[4]?.sentence).toMatch(/Row 6: Amount paid “abc”/);
  await setWording({ payer: "Hearth-Wick", payerText: "POP MISSING", reason: "purchase_date", by: "Ana", at });
  expect(await post(id)).toEqual({ kind: "posted", lines: 3, claims: 3, toTray: 0 });
  expect(await stored(claims[0] ?? "")).toMatchObject({ state: "paid", open_cents: "0" });
  expect(await stored(claims[1] ?? "")).toMatchObject({ state: "short-paid", open_cents: "1000" });
  expect(await stored(claims[2] ?? "")).toMatchObject({ state: "rejected", paid_cents: "0" });
  expect(await readOnly(findClaimsThatDisagree)).toEqual([]);
  const leaks = await readOnly((db) =>
    db.rows(sql`select claim_number, leak, amount_cents::int as cents from unclaimed_work order by claim_number`),
  );
  expect(leaks).toEqual([
    { claim_number: claims[1], leak: "short-paid", cents: 1000 },
    { claim_number: claims[2], leak: "not corrected", cents: await askedOf(claims[2]) },
  ]);
});

test("the same list twice posts nothing twice, and what it brought can be taken back whole", async () => {
  const text = await list();
  const id = await readList(text);
  await post(id);
  expect(await keep(text)).toEqual({ kind: "known", remittanceId: id });
  expect(await post(id)).toEqual({ kind: "posted", lines: 0, claims: 0, toTray: 0 });
  expect(await undoRemittance({ remittanceId: id, by: "Ana", reason: "Wrong list", at })).toEqual({
    kind: "undone",
    claims: 3,
  });
  for (const claim of claims) expect(await stored(claim)).toMatchObject({ state: "sent", paid_cents: "0" });
  expect(await readOnly(findClaimsThatDisagree)).toEqual([]);
  expect((await keep(text)).kind).toBe("kept");
});

test("a list under which something was done later is not taken back, and that act is named", async () => {
  const id = await readList(await list());
  await post(id);
  await act(claims[1] ?? "", { what: "appealed", on: day("2023-07-09"), ground: "The schedule says more." });
  const undone = await undoRemittance({ remittanceId: id, by: "Ana", reason: "Wrong list", at });
  expect(undone).toMatchObject({ kind: "refused" });
  expect(JSON.stringify(undone)).toContain(`${claims[1]}: It was appealed after it was paid`);
  expect(await stored(claims[0] ?? "")).toMatchObject({ state: "paid" });
});

test("an amount over what was asked goes to the tray with its sentence, and keeps no other line from being posted", async () => {
  const asked = await askedOf(claims[0]);
  const id = await readList(`Claim,Paid\n${claims[0]},${euros(asked + 5)}\n${claims[1]},${euros(asked)}\n`);
  expect(await post(id)).toEqual({ kind: "posted", lines: 1, claims: 1, toTray: 1 });
  expect((await linesOf(id))[0]).toMatchObject({
    fate: "tray",
    sentence: expect.stringContaining("more than was asked"),
  });
});

test("somebody names a claim, says yes, or sets a line aside; another currency is refused by name", async () => {
  const asked = await askedOf(claims[0]);
  const id = await readList(
    `Claim;Paid;Currency\nX1;${euros(asked).replace(".", ",")};USD\nX2;5,00;EUR\nX3;7,10;USD\n`,
  );
  const say = async (row: number, decision: Parameters<typeof decideLine>[0]["decision"]) =>
    await decideLine({ remittanceId: id, row, decision, by: "Ana" });
  expect(await say(2, { say: "yes" })).toMatchObject({ kind: "refused" });
  expect(await say(2, { say: "claim", claimNumber: claims[0] ?? "" })).toEqual({ kind: "decided" });
  expect(await say(3, { say: "claim", claimNumber: claims[1] ?? "" })).toMatchObject({
    kind: "refused",
    sentence: `${claims[1]} is in USD; row 3 pays in EUR.`,
  });
  expect(await say(4, { say: "aside", why: "A refund of freight" })).toEqual({ kind: "decided" });
  await post(id);
  expect(await fates(id)).toEqual(["2 posted", "3 tray", "4 set aside"]);
  expect(await stored(claims[0] ?? "")).toMatchObject({ state: "paid" });
});

test("money below zero is a charge-back after the payment", async () => {
  const asked = await askedOf(claims[0]);
  await post(await readList(`Claim,Paid,Note\n${claims[0]},${euros(asked)},\n`));
  await post(await readList(`Claim,Paid,Note\n${claims[0]},(${euros(asked)}),AUDIT: NO SIGNATURE\n`));
  expect(await stored(claims[0] ?? "")).toMatchObject({ state: "clawed back" });
});

test("what a payer’s words mean can be said otherwise later: every version is kept, and what was posted stays as posted", async () => {
  const say = (reason: "purchase_date" | "late") =>
    setWording({ payer: "Hearth-Wick", payerText: "pop  missing", reason, by: "Ana", at });
  const first = await readList(`Claim,Paid,Remark\n${claims[0]},0.00,POP MISSING\n`);
  expect(await say("purchase_date")).toBe(true);
  expect(await say("purchase_date")).toBe(false);
  await post(first);
  const second = await readList(`Claim,Paid,Remark\n${claims[1]},0.00,POP MISSING\n`);
  expect(await say("late")).toBe(true);
  expect([(await linesOf(first))[0]?.reason, (await linesOf(second))[0]?.reason]).toEqual(["purchase_date", "late"]);
  const versions = (await readOnly((db) => loadWordingVersions(db, "Hearth-Wick")))("POP MISSING");
  expect(versions.map(({ version, reason }) => [version, reason])).toEqual([
    [2, "late"],
    [1, "purchase_date"],
  ]);
  const { reasons } = await readOnly((db) => loadMoneyFacts(db, today));
  expect(reasons).toEqual([{ reason: "late", times: 1 }]);
});

test("money for somebody else’s claim, and money taken back that never came, wait in the tray with their sentence", async () => {
  const kept = await keepRemittance({ ...asKept(`Claim,Paid\n${claims[0]},10.00\n`), payer: "Another Payer" });
  if (kept.kind !== "kept") throw new Error(kept.kind);
  await confirm(kept.remittanceId);
  expect(await linesOf(kept.remittanceId)).toMatchObject([
    {
      fate: "tray",
      sentence: `${claims[0]} is not a claim on Another Payer. Ask whose money this is, or set the line aside.`,
    },
  ]);
  const id = await readList(`Claim,Paid\n${claims[1]},-10.00\n`);
  expect(await linesOf(id)).toMatchObject([
    { fate: "tray", sentence: expect.stringContaining("more would be taken back than was paid") },
  ]);
});

test("a file that is no table is refused in a sentence", async () => {
  expect(await keep("%PDF-1.7 \0\0\0")).toMatchObject({ kind: "unreadable" });
  expect(await keep("Claim,Paid\n")).toMatchObject({ kind: "unreadable" });
});
