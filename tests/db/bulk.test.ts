import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { sql } from "drizzle-orm";
import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadIntakeSetting } from "@/db/queries/intake-setting";
import { stagePlain } from "@/db/writes/bulk/stage-plain";
import { stagedKindOf } from "@/db/writes/kinds/staged-kind-of";
import type { LoadResult } from "@/db/writes/load-result";
import { recount } from "@/db/writes/recount";
import { stagingColumns, withStaging } from "@/db/writes/staging/staging-table";
import { takeBack } from "@/db/writes/take-back";
import { soakSeeds } from "../soak-seeds";
import { type DirtyFile, dirtyFile, dirtyJob, dirtyPartLine, dirtyUnit } from "./bulk-fuzz";
import { batchOf, csv, fileFolder, shopDocument, startAfresh, today } from "./intake-files";
import { stateOfData } from "./state-of-data";

const files = fileFolder();
afterAll(async () => {
  files.remove();
  await closeDatabase();
});
beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
});

const textOf = ({ rows, columns }: DirtyFile) => csv(rows, columns);

/** The same rows with a line end that the reader of bytes gives up at, so that every row goes through the parser. */
const parsedTextOf = (file: DirtyFile) => textOf(file).replaceAll("\r\n", "\r");

function reportOf(result: LoadResult) {
  if (!("report" in result)) throw new Error(JSON.stringify(result).slice(0, 500));
  return result.report;
}

async function heldRows() {
  return await readOnly((db) => db.rows(sql`select row, cells, problems from held_rows order by batch_id, row`));
}

/** Everything that the loads of these files, one upon the other, leave behind. */
async function loadAll(all: readonly DirtyFile[], text: (file: DirtyFile) => string) {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  const reports = [];
  for (const file of all) reports.push(reportOf(await files.load(text(file), "add and set aside")));
  return { reports, state: await stateOfData(), held: await heldRows() };
}

/** One is always tried; `npm run soak -- bytes` asks for more. */
describe.each(soakSeeds([1]))("dirty files, seed %i", (seed) => {
  const units = dirtyFile(seed, 120, dirtyUnit);
  const jobs = dirtyFile(seed + 10, 400, dirtyJob);
  const parts = dirtyFile(seed + 20, 400, dirtyPartLine);
  const moreJobs = dirtyFile(seed + 30, 500, dirtyJob);

  test("most rows need no parser", async () => {
    const path = join(files.folder, "plain.csv");
    writeFileSync(path, textOf(jobs));
    const setting = await readOnly((db) => loadIntakeSetting(db, today));
    const kind = stagedKindOf("jobs");
    const staged = await withStaging(async ({ create }) =>
      stagePlain(
        { kind, table: await create(stagingColumns(kind)), setting, folder: files.folder, timeoutSeconds: 60 },
        { path, delimiter: ",", columns: jobs.columns, bytes: 0 },
      ),
    );
    expect(staged?.plainRows).toBeGreaterThan(100);
    expect(staged?.plainRows).toBeLessThan((staged?.rows ?? 0) - jobs.damaged / 2);
  });

  test("a first load and one on top of it leave the same rows, held rows and counts whichever way they are read", async () => {
    const all = [units, jobs, parts, moreJobs];
    const bulk = await loadAll(all, textOf);
    const parsed = await loadAll(all, parsedTextOf);
    expect(bulk.reports).toEqual(parsed.reports);
    expect(bulk.held).toEqual(parsed.held);
    expect(bulk.state).toEqual(parsed.state);
    expect((await recount()).every(({ differing }) => differing === 0)).toBe(true);
    expect(bulk.reports.map(({ rowsHeld }) => rowsHeld > 0 && rowsHeld < 400)).toEqual([true, true, true, true]);
  });

  test("taken back in the order of loading, nothing is left; in the other order neither", async () => {
    const empty = await stateOfData();
    for (const order of ["toSorted", "toReversed"] as const) {
      const batches: number[] = [];
      for (const file of [units, jobs, parts, moreJobs])
        batches.push(batchOf(await files.load(textOf(file), "add and set aside")));
      for (const batch of batches[order]()) await takeBack(batch);
      expect(await stateOfData()).toEqual(empty);
    }
  });
});
