// Pages of covered work, against the whole list sorted by separate code: days that many rows share, days gone by, none.
import { sql } from "drizzle-orm";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { countClaims, loadClaimList } from "@/db/queries/claim-list";
import { type ClaimableFilter, countClaimable, loadClaimable } from "@/db/queries/claimable";
import { loadUnclaimedFacts, loadUnclaimedList } from "@/db/queries/money-unclaimed";
import { rebuildUnclaimed } from "@/db/writes/money/rebuild-unclaimed";
import { day } from "@/lib/calendar/day";
import { draftOf, startWithJobs } from "../claims/claim-files";
import { fileFolder } from "../intake-files";
import { anyWork } from "./any-work";

const files = fileFolder();
const today = day("2023-05-10");
const jobs = 40;

beforeAll(async () => {
  await startWithJobs(files, jobs);
  await rebuildUnclaimed();
  // Five rows to a day, a quarter of them before today, some without a day.
  await inTransaction(async (tx) => {
    await tx.rows(sql`
      with numbered as (select unit_id, job_id, row_number() over (order by md5(job_id::text)) as n from unclaimed_work)
      update unclaimed_work w set due_on = case when n % 9 = 0 then null else date '2023-05-08' + (n / 5)::int end,
        completed_on = date '2023-04-01' + (n % 4)::int, payer = case when n % 3 = 0 then 'Other payer' else payer end
      from numbered where numbered.unit_id = w.unit_id and numbered.job_id = w.job_id`);
  });
}, 60_000);
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const inOrder = (...pairs: readonly (readonly [string, string])[]) =>
  pairs.map(([a, b]) => (a < b ? -1 : a > b ? 1 : 0)).find((sign) => sign !== 0) ?? 0;

const filters: readonly ClaimableFilter[] = [{}, { payer: "Other payer" }, { until: day("2023-05-12") }];

test.each(filters)("pages of what can be filed under %o make up the whole, the nearest day first", async (filter) => {
  const whole = await readOnly((db) => loadClaimable(db, today, filter));
  const sorted = whole.toSorted((a, b) => inOrder([a.lastDay, b.lastDay], [a.jobNumber, b.jobNumber]));
  expect(whole).toEqual(sorted);
  expect(whole.length).toBeGreaterThan(3);
  expect(whole.every(({ lastDay }) => lastDay >= today)).toBe(true);
  expect(await readOnly((db) => countClaimable(db, today, filter))).toBe(whole.length);
  const pages = [];
  for (let offset = 0; offset <= whole.length; offset += 3)
    pages.push(...(await readOnly((db) => loadClaimable(db, today, filter, { offset, limit: 3 }))));
  expect(pages).toEqual(whole);
});

test("pages of everything missed make up the whole: to come, without a day, gone by", async () => {
  const of = (offset: number, limit: number | undefined) =>
    readOnly((db) => loadUnclaimedList(db, anyWork, today, { offset, limit }));
  const { rows: whole, total } = await of(0, undefined);
  expect([whole.length, total]).toEqual([jobs, jobs]);
  const rank = ({ dueOn }: (typeof whole)[number]) => (dueOn === undefined ? "1" : dueOn < today ? "2" : "0");
  const sorted = whole.toSorted((a, b) =>
    inOrder(
      [rank(a), rank(b)],
      [a.dueOn ?? "", b.dueOn ?? ""],
      [b.completedOn, a.completedOn],
      [a.jobNumber, b.jobNumber],
    ),
  );
  expect(whole).toEqual(sorted);
  expect(new Set(whole.map(rank)).size).toBe(3);
  const pages = [];
  for (let offset = 0; offset <= jobs; offset += 7) pages.push(...(await of(offset, 7)).rows);
  expect(pages).toEqual(whole);
});

test("the sums of all classes are those of the rows, and every payer is named", async () => {
  const { totals, payers } = await readOnly((db) => loadUnclaimedFacts(db, today));
  const plain = await readOnly((db) =>
    db.rows<{ rows: number; cents: number }>(
      sql`select count(*)::int as rows, sum(amount_cents)::float8 as cents from unclaimed_work`,
    ),
  );
  const sum = (what: "rows" | "cents") => totals.reduce((all, total) => all + total[what], 0);
  expect([{ rows: sum("rows"), cents: sum("cents") }]).toEqual(plain);
  expect(new Set(totals.map(({ leak, currency }) => `${leak} ${currency}`)).size).toBe(totals.length);
  expect(payers).toContain("Other payer");
  expect(payers).toHaveLength(2);
});

test("claims that must be filed by a day are counted and listed as they stand in the whole list", async () => {
  for (const number of ["J1", "J2", "J3"]) await draftOf(number);
  await inTransaction(async (tx) => {
    await tx.rows(sql`update claims set file_by = date '2023-06-01' + (right(claim_number, 1))::int`);
  });
  const { whole, byDay, counted, second } = await readOnly(async (db) => {
    const whole = await loadClaimList(db, { states: ["draft"] });
    const until = { states: ["draft"], until: whole[1]?.fileBy } as const;
    return {
      whole,
      byDay: await loadClaimList(db, until),
      counted: await countClaims(db, until),
      second: await loadClaimList(db, { states: ["draft"] }, { offset: 1, limit: 1 }),
    };
  });
  expect(whole).toHaveLength(3);
  expect(byDay).toEqual(whole.slice(0, 2));
  expect(counted).toBe(2);
  expect(second).toEqual(whole.slice(1, 2));
});
