// What is missing of each row is stored once for all that lack the same. By definition: whoever reads rows reads the very
// sentences that the judge said, also of rows that a release before kept with each row.
import { sql } from "drizzle-orm";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { loadClaimable } from "@/db/queries/claimable";
import { loadMoneyCases } from "@/db/queries/money-cases";
import { loadUnclaimedFacts, loadUnclaimedList } from "@/db/queries/money-unclaimed";
import { judgeUnclaimed } from "@/db/writes/money/judge-unclaimed";
import { loadYardstick } from "@/db/writes/money/load-yardstick";
import { rebuildUnclaimed } from "@/db/writes/money/rebuild-unclaimed";
import { refreshUnclaimed } from "@/db/writes/money/refresh-unclaimed";
import { day } from "@/lib/calendar/day";
import { startWithJobs } from "../claims/claim-files";
import { fileFolder } from "../intake-files";
import { anyWork } from "./any-work";

const files = fileFolder();
beforeAll(() => startWithJobs(files, 3));
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const today = day("2023-05-10");
const all = { kind: "run", after: undefined, until: undefined } as const;

const shown = () =>
  readOnly(async (db) => {
    const { rows } = await loadUnclaimedList(db, anyWork, today, { offset: 0, limit: undefined });
    return rows.map(({ missing }) => missing);
  });
const claimable = () => readOnly(async (db) => (await loadClaimable(db, today)).map(({ missing }) => missing));
const lists = () => readOnly((db) => db.rows<{ missing: readonly string[] }>(sql`select missing from missing_lists`));
const said = () =>
  readOnly(async (db) => {
    const yardstick = await loadYardstick(db);
    return judgeUnclaimed(await loadMoneyCases(db, all, yardstick.policies), yardstick).map(({ missing }) => missing);
  });

test("three jobs that lack the same name one list, and every reader reads what the judge said", async () => {
  await rebuildUnclaimed();
  const words = await said();
  expect(words).toHaveLength(3);
  expect(words[0]?.length).toBeGreaterThan(3);
  expect(await shown()).toEqual(words);
  expect(await claimable()).toEqual(words);
  expect(await lists()).toEqual([{ missing: words[0] }]);
  const [total] = (await readOnly((db) => loadUnclaimedFacts(db, today))).totals;
  expect(total?.missing).toBe(3);
});

test("rows of the release before are read as they are, and judged anew they are stored like all others", async () => {
  const words = await said();
  await inTransaction(async (tx) => {
    await tx.rows(
      sql`update unclaimed_work set missing = (select missing from missing_lists limit 1), missing_key = null`,
    );
    await tx.rows(sql`delete from missing_lists`);
  });
  expect(await shown()).toEqual(words);
  expect(await claimable()).toEqual(words);
  await rebuildUnclaimed();
  expect(await shown()).toEqual(words);
  expect(await lists()).toHaveLength(1);
});

test("a release before sees in the rows of this one that something is missing, and where it is told", async () => {
  const [row] = await readOnly((db) =>
    db.rows<{ missing: readonly string[] }>(sql`select missing from unclaimed_work limit 1`),
  );
  expect(row?.missing).toEqual(["What is missing is told on the claim page of the job."]);
});

test("a list that nothing names any more goes when everything is judged anew", async () => {
  const [one] = await readOnly((db) =>
    db.rows<{ unit: string }>(sql`select unit_id::text as unit from unclaimed_work order by 1 limit 1`),
  );
  await inTransaction(async (tx) => {
    await tx.rows(sql`insert into missing_lists values (7, '["Nobody asks for this."]')`);
    await refreshUnclaimed(tx, [one?.unit ?? ""]);
  });
  expect(await lists()).toHaveLength(2);
  await rebuildUnclaimed();
  expect(await lists()).toHaveLength(1);
});
