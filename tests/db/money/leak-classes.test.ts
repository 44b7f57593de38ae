// One case of every way in which money is lost, through the same writes as the pages, found under its own name.
import { afterAll, beforeAll, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadUnclaimedFacts, loadUnclaimedList } from "@/db/queries/money-unclaimed";
import { day } from "@/lib/calendar/day";
import { leakKeys } from "@/lib/claims/leaks/leak";
import type { ClaimAct } from "@/lib/claims/life/claim-act";
import { payItems } from "@/lib/domain/pay-item";
import { samplePolicy } from "../../coverage/sample-policy";
import { act, draftOf, policy, send } from "../claims/claim-files";
import { csv, fileFolder, job, partLine, type Row, shopDocument, startAfresh, unit } from "../intake-files";

const files = fileFolder();
const today = day("2023-05-31");

/** A year for the whole unit, five for the part of a motor alone, a campaign on one serial, repeats within 30 days. */
const terms = samplePolicy({
  ...policy,
  classes: [{ key: "motors", name: "Motors", members: ["drive_motor"] }],
  terms: [
    { covers: { kind: "whole_unit" }, pays: payItems, term: { n: 1, unit: "year" } },
    { covers: { kind: "class", class: "motors" }, pays: ["parts"], term: { n: 5, unit: "year" } },
  ],
  campaigns: [
    {
      key: "locks",
      name: "Door locks of 2015",
      serials: [{ from: "A4", to: "A4" }],
      component: "door_lock",
      pays: payItems,
      sourceDocument: "Bulletin 7",
    },
  ],
  repeat: { within: { n: 30, unit: "day" }, same: "component" },
});

const old = { made: "", sold_on: "2015-03-01", installed_on: "2015-03-02" };
const sold = { sold_on: "2022-09-01", installed_on: "2022-09-02" };
const units = [
  ...[1, 2, 6, 7, 8, 9].map((n) => unit(`A${n}`, sold)),
  unit("A3", { made: "", sold_on: "2020-09-01", installed_on: "2020-09-02" }),
  unit("A4", old),
  unit("A5", sold),
];
const jobs = [
  ...[1, 6, 7, 8, 9].map((n) => job(`J${n}`, `A${n}`)),
  job("J2", "A2", { requested_on: "2023-03-01", completed_on: "2023-03-03" }),
  job("J3", "A3", { component: "drive_motor", symptom: "" }),
  job("J4", "A4", { component: "door_lock", symptom: "" }),
  job("J0", "A5", { requested_on: "2023-04-20", completed_on: "2023-04-21", cause: "foreign_object" }),
  job("J5", "A5", { component: "door_lock", symptom: "" }),
].map((row): Row => ({ ...row, payer: row.job_number === "J5" ? "own_guarantee" : "customer" }));

beforeAll(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv(units));
  await files.load(csv(jobs));
  const lines = jobs.map(({ job_number }) => {
    const number = String(job_number);
    const component = number === "J3" ? "drive_motor" : ["J4", "J5"].includes(number) ? "door_lock" : "drain_pump";
    return partLine(number, 1, { component, invoice_number: `I-${number}`, invoice_line: "1" });
  });
  await files.load(csv(lines));
  await files.load(JSON.stringify({ schema: "ohmsworth/policies/1", policies: [terms] }));
  const paid = (lines: readonly [number, number][]): Extract<ClaimAct, { what: "paid" }> => ({
    what: "paid",
    on: day("2023-05-20"),
    reference: "CR-1",
    lines: lines.map(([line, cents]) => ({ line, cents })),
  });
  // A pump of 41.50, its handling of 4.15, and labour of 65.00 are asked, in this order.
  await tell("J6", {
    what: "answered",
    on: day("2023-05-20"),
    answer: { kind: "rejected", reason: "late", payerText: "LATE" },
  });
  await tell(
    "J7",
    paid([
      [1, 4150],
      [2, 415],
      [3, 5000],
    ]),
  );
  await tell("J8", paid([[3, 6500]]));
  await tell(
    "J9",
    paid([
      [1, 4150],
      [2, 415],
      [3, 6500],
    ]),
    {
      what: "clawed back",
      on: day("2023-05-28"),
      reference: "A-1",
      reason: "documents_missing",
      payerText: "NO SIGNATURE",
      lines: [{ line: 3, cents: 6500 }],
    },
  );
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

async function tell(jobNumber: string, ...acts: Parameters<typeof act>[1][]): Promise<void> {
  const claim = await draftOf(jobNumber);
  await send(claim, day("2023-05-12"));
  for (const each of acts) {
    const result = await act(claim, each);
    expect(result, JSON.stringify(result)).toMatchObject({ kind: "recorded" });
  }
}

const anything = { payer: undefined, component: undefined, within: undefined, from: undefined, to: undefined };

test.each([
  ["never filed", "J1", 11_065],
  ["late", "J2", 11_065],
  ["parts only", "J3", 4565],
  ["campaign", "J4", 11_065],
  ["repeat absorbed", "J5", 11_065],
  ["not corrected", "J6", 11_065],
  ["short-paid", "J7", 1500],
  ["part credit", "J8", 4565],
  ["charged back", "J9", 6500],
] as const)("%s: job %s, for %i cents", async (leak, jobNumber, cents) => {
  const found = await readOnly((db) =>
    loadUnclaimedList(db, { ...anything, leak }, today, { offset: 0, limit: undefined }),
  );
  expect(found.rows.map((row) => [row.jobNumber, row.cents.all])).toEqual([[jobNumber, cents]]);
});

test("every class of lost money has its case above, and there are no others", async () => {
  const { totals } = await readOnly((db) => loadUnclaimedFacts(db, today));
  expect(totals.map(({ leak }) => leak).sort()).toEqual([...leakKeys, "late"].sort());
});
