// Parts expected from the machines that carry them: what outlooks know of those, and that they follow changes of jobs,
// machines and signals.
import { sql } from "drizzle-orm";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { editJob } from "@/db/writes/edit-job";
import { workOutOutlooks } from "@/db/writes/parts/settle-outlooks";
import { day } from "@/lib/calendar/day";
import type { StoredFleet } from "@/lib/forecast/fleet/stored-fleet";
import { unpackedFutures } from "@/lib/forecast/packed-futures";
import { minimalStandard } from "../minimal-standard";
import { csv, fileFolder, job, partLine, type Row, shopDocument, startAfresh, unit } from "./intake-files";

const files = fileFolder();
const today = day("2025-06-15");
const machines = 240;
/** Months of 2022-06 to 2025-05, in each of which a machine's pump fails with this chance. */
const [months, chance] = [36, 0.012];

const rows = jobRows();

/** Every failure takes a pump, every second one two clamps as well. */
function jobRows(): { readonly jobs: Row[]; readonly lines: Row[] } {
  const random = minimalStandard(3);
  const jobs: Row[] = [];
  const lines: Row[] = [];
  for (let month = 0; month < months; month++)
    for (let machine = 0; machine < machines; machine++) {
      if (random() >= chance) continue;
      const on = `${2022 + Math.floor((month + 5) / 12)}-${String(((month + 5) % 12) + 1).padStart(2, "0")}-10`;
      const number = `J${jobs.length}`;
      jobs.push(job(number, `A${machine}`, { requested_on: on, completed_on: on }));
      lines.push(partLine(number, 1));
      if (jobs.length % 2 === 0) lines.push(partLine(number, 2, { part_number: "C-7", quantity: 2 }));
    }
  return { jobs, lines };
}

beforeAll(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(
    csv(Array.from({ length: machines }, (_, i) => unit(`A${i}`, { installed_on: "2021-03-01", made: "2021-01" }))),
  );
  await files.load(csv(rows.jobs));
  await files.load(csv(rows.lines));
  await workOutOutlooks(today);
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

interface Kept extends Record<string, unknown> {
  readonly key: string;
  readonly method: string;
  readonly fleet: StoredFleet;
  readonly mean: number;
  readonly futures: Buffer;
}

const kept = async () =>
  new Map(
    (
      await readOnly((db) =>
        db.rows<Kept>(sql`
          select part_key as key, outlook->>'method' as method, outlook->'fleet' as fleet,
            (outlook #>> '{months,0,mean}')::float8 as mean, futures from part_outlooks`),
      )
    ).map((row) => [row.key, row]),
  );
const fleetOf = async (key: string) => {
  const fleet = (await kept()).get(key)?.fleet;
  if (fleet?.kind !== "fleet") throw new Error(`${key}: ${JSON.stringify(fleet)}`);
  return fleet;
};

// By definition with separate code: the rows above, counted here.
test("outlooks know the machines that run, their failures, and how many repairs took the part", async () => {
  const found = await kept();
  const lastTwoYears = rows.jobs.filter(({ completed_on }) => String(completed_on) >= "2023-06-01").length;
  expect(found.get("P100")).toMatchObject({
    method: "fleet-lives",
    fleet: {
      kind: "fleet",
      maker: "Hearth-Wick",
      running: machines,
      lastFailures: lastTwoYears,
      took: lastTwoYears,
      pieces: 1,
    },
  });
  // A machine that failed twice in one month is one job too few for nobody: each row is a failure of its own.
  expect((await fleetOf("P100")).failures).toBe(rows.jobs.length);
  const clamps = await fleetOf("C7");
  expect(clamps.pieces).toBe(2);
  expect(Math.abs(clamps.took - lastTwoYears / 2)).toBeLessThan(2);
  // 240 machines at 0.012 a month need 2.9 pumps, of some 100 failures: a tenth of error.
  expect(Math.abs((found.get("P100")?.mean ?? 0) / (machines * chance) - 1)).toBeLessThan(0.35);
});

test("parts of one component are drawn from the same failures, so that their sums hold what they share", async () => {
  const sums = (futures: Buffer | undefined) =>
    unpackedFutures(futures ?? Buffer.alloc(0), 24).map((row) => row.reduce((sum, count) => sum + count, 0));
  const found = await kept();
  const [pumps, clamps] = [sums(found.get("P100")?.futures), sums(found.get("C7")?.futures)];
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [p, c] = [mean(pumps), mean(clamps)];
  const product = mean(pumps.map((pieces, i) => (pieces - p) * ((clamps[i] ?? 0) - c)));
  const spread = (values: readonly number[], of: number) => Math.sqrt(mean(values.map((value) => (value - of) ** 2)));
  // Independent parts would be within ± 0.1 of none.
  expect(product / spread(pumps, p) / spread(clamps, c)).toBeGreaterThan(0.3);
});

test("a changed job tells on every part of its component", async () => {
  const before = await fleetOf("C7");
  await editJob({ jobNumber: "J0", column: "component", value: "door_lock", by: "test", reason: "test" });
  expect((await fleetOf("P100")).failures).toBe(before.failures - 1);
  expect((await fleetOf("C7")).failures).toBe(before.failures - 1);
  await editJob({ jobNumber: "J0", column: "component", value: "drain_pump", by: "test", reason: "test" });
  expect((await fleetOf("C7")).failures).toBe(before.failures);
});

test("machines that came or left are asked for anew", async () => {
  await files.load(csv([unit("A0", { installed_on: "2021-03-01", made: "2021-01", retired_on: "2025-05-20" })]));
  const marks = await readOnly((db) => db.rows<{ n: string }>(sql`select part_number as n from parts_to_forecast`));
  expect(marks).toEqual([{ n: "*" }]);
  await workOutOutlooks(today);
  expect((await fleetOf("P100")).running).toBe(machines - 1);
});

// By hand: 30.5 failures where 10 were expected, and 12 expected in the half-year ahead, are 24.6 more: 4.1 a month. The
// 20 too many are not the life's any more: a fifth of its hundred failures, and so of its 2.9 a month.
test("an open signal is in what is expected, and one that was dismissed is not", async () => {
  const mean = async () => (await kept()).get("P100")?.mean ?? 0;
  const plain = await mean();
  const lead = {
    key: { kind: "component", word: "drain_pump", productType: "front_load_washer", maker: "Hearth-Wick" },
    onsetWeek: 2870,
    observed: 30,
    expected: 10,
    expectedAhead: 12,
    firstWeek: 2700,
    weeklyObserved: [],
    weeklyExpected: [],
    ages: [],
  };
  await inTransaction(async (tx) => {
    await tx.execute(
      sql`insert into signal_runs (as_of, basis, computed_at, outcome, cells, stories, by_luck) values ('2025-06-08', 'test', now(), 'followed', 1, 1, 0.1)`,
    );
    await tx.execute(sql`
      insert into found_signals (as_of, signal_key, word_kind, word, product_type, maker, onset_on, observed, expected, chance, adjusted, lead, within, symptoms)
      values ('2025-06-08', 'drain_pump~x', 'component', 'drain_pump', 'front_load_washer', 'Hearth-Wick', '2025-01-06', 30, 10, 0.001, 0.01, ${JSON.stringify(lead)}::jsonb, '[]', '[]')`);
  });
  await workOutOutlooks(today);
  expect((await fleetOf("P100")).signals).toEqual([{ key: "drain_pump~x", observed: 30, expected: 10 }]);
  const more = (await mean()) - plain;
  expect(more).toBeGreaterThan(2.5);
  expect(more).toBeLessThan(4.6);
  await inTransaction((tx) =>
    tx.execute(sql`
      insert into signal_marks (signal_key, kind, reason, by, at, as_of, observed, expected)
      values ('drain_pump~x', 'dismiss', 'a test', 'test', now(), '2025-06-08', 30, 10)`),
  );
  await workOutOutlooks(today);
  expect((await fleetOf("P100")).signals).toEqual([]);
  expect(await mean()).toBeCloseTo(plain, 6);
});
