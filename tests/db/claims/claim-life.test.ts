import { createHash } from "node:crypto";
import { sql } from "drizzle-orm";
import { afterAll, beforeEach, expect, test } from "vitest";
import { keepDraft } from "@/app/_claims/keep-draft";
import { loadClaim } from "@/app/_claims/load-claim";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { loadClaimLife, loadSentBytes } from "@/db/queries/claim-life";
import { findClaimsThatDisagree } from "@/db/queries/claims-that-disagree";
import { editJob } from "@/db/writes/edit-job";
import { day } from "@/lib/calendar/day";
import { readSentText } from "@/lib/claims/life/sent-content";
import { neutralClaimDocument } from "@/lib/claims/neutral/neutral-claim-document";
import { fileFolder } from "../intake-files";
import { act, allReasons, builtOn, draftOf, send, startWithJobs, stored } from "./claim-files";

const files = fileFolder();
beforeEach(() => startWithJobs(files, 2));
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const disagreeing = () => readOnly(findClaimsThatDisagree);

// The way is that of the trade: filed, rejected, corrected, paid short, appealed, paid (common practice, no source).
test("a claim lives from draft to money, and its columns are always what its events give", async () => {
  const claim = await draftOf("J1");
  expect(await stored(claim)).toMatchObject({ state: "draft", submission: null });
  expect(await send(claim, day("2023-05-12"))).toMatchObject({ kind: "recorded", state: "sent", version: 2 });
  await act(claim, { what: "received", on: day("2023-05-13"), payerReference: "HW-77" });
  await act(claim, {
    what: "answered",
    on: day("2023-06-01"),
    answer: { kind: "rejected", reason: "purchase_date", payerText: "POP INVALID" },
  });
  expect(await disagreeing()).toEqual([]);
  const rejected = await stored(claim);
  expect(rejected.state).toBe("rejected");
  expect(rejected.resubmit_by).not.toBeNull();

  expect(await send(claim, day("2023-06-05"))).toMatchObject({ kind: "recorded", state: "sent" });
  const sent = await stored(claim);
  expect(sent).toMatchObject({ submission: 2, resubmit_by: null });
  const life = await readOnly((db) => loadClaimLife(db, claim));
  const lines = life?.events.flatMap(({ act: each }) => (each.what === "sent" ? [each.lines] : [])).at(-1) ?? [];
  const asked = lines.reduce((sum, { cents }) => sum + cents, 0);
  expect(sent.claimed_cents).toBe(String(asked));

  const short = lines.map(({ line, cents }, index) => ({ line, cents: index === 0 ? cents - 100 : cents }));
  await act(claim, { what: "paid", on: day("2023-07-01"), reference: "CR-1", lines: short });
  expect(await stored(claim)).toMatchObject({
    state: "short-paid",
    open_cents: "100",
    paid_cents: String(asked - 100),
  });
  await act(claim, { what: "appealed", on: day("2023-07-02"), ground: "The invoice says so." });
  await act(claim, { what: "paid", on: day("2023-07-20"), reference: "CR-2", lines: [{ line: 1, cents: 100 }] });
  expect(await stored(claim)).toMatchObject({ state: "paid", open_cents: "0", paid_cents: String(asked), version: 8 });
  expect(await disagreeing()).toEqual([]);
});

test("a claim stands where its last event puts it, whatever the clock said meanwhile", async () => {
  const claim = await draftOf("J1");
  await send(claim, day("2023-05-12"), { at: "2024-05-12T10:00:00Z" }); // a year ahead
  await act(
    claim,
    { what: "received", on: day("2023-05-13"), payerReference: "HW-77" },
    { at: "2023-05-13T10:00:00Z" },
  );
  const answer = { kind: "rejected", reason: "purchase_date", payerText: "POP INVALID" } as const;
  await act(claim, { what: "answered", on: day("2023-06-01"), answer }, { at: "2023-05-12T10:00:00Z" }); // put back a day
  expect(await stored(claim)).toMatchObject({ state: "rejected" });
  const life = await readOnly((db) => loadClaimLife(db, claim));
  expect(life?.events.map(({ act: each }) => each.what)).toEqual(["built", "sent", "received", "answered"]);
  expect(await disagreeing()).toEqual([]);
});

test("what was sent is kept byte for byte under its hash, whatever becomes of the job", async () => {
  const claim = await draftOf("J1");
  await send(claim, day("2023-05-12"));
  const before = await readOnly((db) => loadSentBytes(db, claim, 1));
  if (before === undefined) throw new Error("nothing was sent");
  const hash = createHash("sha256").update(before.content).digest("hex");
  expect(before.submission.contentSha256).toBe(hash);
  const life = await readOnly((db) => loadClaimLife(db, claim));
  expect(life?.events.at(-1)?.act).toMatchObject({ what: "sent", sha256: hash });
  const content = readSentText(before.content.toString("utf8"));
  expect(content).toMatchObject({
    schema: "ohmsworth/sent-claim/2",
    claimNumber: claim,
    filing: 1,
    sentOn: "2023-05-12",
  });
  expect(neutralClaimDocument.parse(content.claim).header).toMatchObject({ claimNumber: claim, jobNumber: "J1" });
  expect(content.claim?.money.total.cents).toBe(content.askedCents);
  expect(content.lines.reduce((sum, { cents }) => sum + cents, 0)).toBe(content.askedCents);

  const opened = () => readOnly((db) => loadClaim(db, claim, day("2023-05-12")));
  expect((await opened())?.changed).toEqual([]);
  await editJob({
    jobNumber: "J1",
    column: "correction",
    value: "Replaced the pump and the hose.",
    by: "Ana",
    reason: "",
  });
  expect((await opened())?.changed).toEqual(["Complaint, cause or correction"]);
  const after = await readOnly((db) => loadSentBytes(db, claim, 1));
  expect(after?.content.equals(before.content)).toBe(true);
});

test("a failed check stops the sending until a reason is given, and the reason is kept", async () => {
  const claim = await draftOf("J1");
  const stopped = await send(claim, day("2023-05-12"), {}, {});
  expect(stopped.kind).toBe("not sent");
  if (stopped.kind !== "not sent") return;
  expect(stopped.problems.map(({ check }) => check)).toContain("purchase_date");
  expect(await stored(claim)).toMatchObject({ state: "draft", version: 1 });
  await send(claim, day("2023-05-12"), {}, allReasons);
  const life = await readOnly((db) => loadClaimLife(db, claim));
  expect(life?.submissions[0]?.overrides).toContainEqual(
    expect.objectContaining({ check: "purchase_date", reason: "Agreed by phone" }),
  );
});

test("one invoice line pays once: the second claim on it fails its check and names the first", async () => {
  const first = await draftOf("J1");
  await inTransaction((tx) =>
    tx.execute(sql`update part_lines set invoice_number = 'INV-1' where invoice_number = 'INV-2'`),
  );
  const second = await draftOf("J2");
  const open = await readOnly((db) => loadClaim(db, second, day("2023-05-12")));
  const repeat = open?.checks.find(({ key }) => key === "repeat");
  expect(repeat?.verdict).toBe("failed");
  expect(repeat?.fixes.join()).toContain(first);
});

test("after the filing window a draft can still be looked at, and its clock fails", async () => {
  const claim = await draftOf("J1");
  const open = await readOnly((db) => loadClaim(db, claim, day("2024-05-12")));
  expect(open?.claim.assembly.kind).toBe("claim");
  expect(open?.checks.find(({ key }) => key === "clock")?.verdict).toBe("failed");
});

test("a claim can't be sent on a day to come, nor before the job was completed", async () => {
  const claim = await draftOf("J1");
  expect(await send(claim, day("2023-05-02"))).toMatchObject({ kind: "not sent" });
  expect(await stored(claim)).toMatchObject({ state: "draft" });
});

test.each([
  ["a policy", { jobNumber: "J1", policy: { key: "maker-of-nobody" } }],
  ["a job", { jobNumber: "J-0", policy: { key: "maker-standard" } }],
])("%s that is not on file makes no claim, and is told in a sentence", async (_name, asked) => {
  expect(await keepDraft({ ...asked, by: "Ana", today: builtOn })).toEqual({
    kind: "not kept",
    problems: ["This job or policy is no longer on file. Open the job again."],
  });
  expect(await readOnly((db) => db.rows(sql`select from claims`))).toEqual([]);
});

test("an answer or a payment that can’t be is refused with its line, and leaves the claim as it was", async () => {
  const claim = await draftOf("J1");
  await send(claim, day("2023-05-12"));
  const before = await stored(claim);
  const approve = (line: number, cents: number) =>
    act(claim, {
      what: "answered",
      on: day("2023-06-01"),
      answer: { kind: "approved", lines: [{ line, cents }], reason: undefined, payerText: "" },
    });
  expect(await approve(1, 4151)).toEqual({ kind: "refused", sentence: "Line 1: more was approved than was asked." });
  expect(await approve(9, 1)).toEqual({ kind: "refused", sentence: "Line 9 is not a line of this claim." });
  expect(await stored(claim)).toEqual(before);
});
