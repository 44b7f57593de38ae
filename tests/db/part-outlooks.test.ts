import { sql } from "drizzle-orm";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadPartList } from "@/db/queries/part-list";
import { editJob } from "@/db/writes/edit-job";
import { workOutOutlooks } from "@/db/writes/parts/settle-outlooks";
import { day } from "@/lib/calendar/day";
import { normalised } from "@/lib/domain/normalised";
import { csv, fileFolder, job, partLine, type Row, shopDocument, startAfresh, unit } from "./intake-files";

const files = fileFolder();
const today = day("2024-06-15");

/** Thirty months of jobs: part P-100 until the end of 2022 and its successor P-101 after, and now and then P-200. */
beforeAll(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([unit("A1")]));
  const jobs: Row[] = [];
  const lines: Row[] = [];
  for (let month = 0; month < 30; month++) {
    const on = `${2022 + Math.floor(month / 12)}-${String((month % 12) + 1).padStart(2, "0")}-10`;
    jobs.push(job(`J${month}`, "A1", { requested_on: on, completed_on: on }));
    lines.push(partLine(`J${month}`, 1, { part_number: month < 12 ? "P-100" : "p101" }));
    if (month % 5 === 0) lines.push(partLine(`J${month}`, 2, { part_number: "P-200", quantity: 2 }));
  }
  await files.load(csv(jobs));
  await files.load(csv(lines));
  await files.load(csv([{ part_number: "P-101", component: "drain_pump", replaces: "P-100", cost: "12.00" }]));
  await workOutOutlooks(today);
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const outlooks = async () =>
  new Map(
    (
      await readOnly((db) =>
        db.rows<{ key: string; history: number[]; version: string; at: string; from: string; total: number }>(sql`
          select part_key as key, history, data_version as version, worked_out_at::text as at, forecast_from::text as from,
            (select sum(h::int) from jsonb_array_elements_text(history) h)::int as total
          from part_outlooks`),
      )
    ).map((row) => [row.key, row]),
  );

// By definition with separate code: the months of the rows above, counted here.
test("a number's use is counted under the one that took its place, month by month, up to the month of today", async () => {
  const found = await outlooks();
  expect([...found.keys()].toSorted()).toEqual(["P101", "P200"]);
  expect(found.get("P101")?.history).toEqual(Array.from({ length: 29 }, () => 1));
  expect(found.get("P200")?.history).toEqual(Array.from({ length: 29 }, (_, month) => (month % 5 === 0 ? 2 : 0)));
  expect(found.get("P101")?.from).toBe("2024-06-01");
});

test("a changed job works its own parts out anew, within a second, and no others", async () => {
  const before = await outlooks();
  const began = performance.now();
  await editJob({ jobNumber: "J7", column: "completed_on", value: "2022-09-20", by: "test", reason: "test" });
  const took = performance.now() - began;
  const after = await outlooks();
  expect(after.get("P101")?.history.slice(6, 10)).toEqual([1, 0, 2, 1]);
  expect(after.get("P101")?.version).not.toBe(before.get("P101")?.version);
  expect(after.get("P200")?.at).toBe(before.get("P200")?.at);
  const [marks] = await readOnly((db) => db.rows<{ n: number }>(sql`select count(*)::int as n from parts_to_forecast`));
  expect(marks?.n).toBe(0);
  // A second on a quiet machine; loaded ones are slower by their load.
  expect(took).toBeLessThan(10_000);
});

test("the same records give the same outlooks, to the last byte of their futures", async () => {
  const all = () =>
    readOnly((db) =>
      db.rows(sql`select part_key, data_version, outlook, md5(futures) as futures from part_outlooks order by 1`),
    );
  await workOutOutlooks(today, { anew: true }); // the edit above has changed what all parts together say
  const before = await all();
  await workOutOutlooks(today, { anew: true });
  expect(await all()).toEqual(before);
  expect(await workOutOutlooks(today)).toEqual({ parts: 2, changed: 0 });
});

test("all parts together are the sum of the components, in every future's mean", async () => {
  const totals = await readOnly((db) =>
    db.rows<{ key: string; mean: number }>(
      sql`select key, (total #>> '{months,0,pieces,mean}')::float8 as mean from demand_totals`,
    ),
  );
  const of = (key: string) => totals.find((row) => row.key === key)?.mean ?? 0;
  const parts = totals.filter(({ key }) => key !== "all").reduce((sum, { mean }) => sum + mean, 0);
  expect(of("all")).toBeCloseTo(parts, 9);
  expect(of("all")).toBeGreaterThan(0);
});

test("the list knows what is expected and that nobody has counted", async () => {
  const [part] = (await readOnly((db) => loadPartList(db))).filter(({ partKey }) => partKey === normalised("p-101"));
  expect(part).toMatchObject({
    partNumber: "P-101",
    component: "drain_pump",
    unitCostCents: 1200,
    onHand: undefined,
    usedLastYear: 12,
  });
  expect(part?.plan.reorder.kind).toBe("reorder-point");
});
