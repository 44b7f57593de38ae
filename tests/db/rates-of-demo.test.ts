import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { sql } from "drizzle-orm";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { loadFailureRates } from "@/app/repeats/load-failure-rates";
import { ratesDocument } from "@/app/repeats/rate-record";
import { readOnly } from "@/db/client";
import { loadFile } from "@/db/writes/load-file";
import { addDays, type Day, day, daysBetween } from "@/lib/calendar/day";
import { poissonRate } from "@/lib/statistics/intervals/poisson-rate";
import { type ExposedUnit, expectedFailures } from "@/synthetic-data/expected-failures";
import { scenarioOf } from "@/synthetic-data/scenario";
import type { Truth } from "@/synthetic-data/truth";
import { writeDemo } from "@/synthetic-data/write-demo";
import { startAfresh } from "./intake-files";

// The demo company goes in through the intake, and the rates that page and command give are held against a plain
// recount that reads units and jobs one by one, and against the true rates that the company was drawn from.

const until = day("2026-10-31");
const folder = mkdtempSync(join(tmpdir(), "ohmsworth-demo-"));
let truth: Truth;

beforeAll(async () => {
  await startAfresh();
  truth = await writeDemo(scenarioOf({ seed: 1, size: 0.25, until }), folder);
  for (const name of ["shop.json", "units.csv", "jobs.csv"]) {
    const result = await loadFile({
      path: join(folder, name),
      fileName: name,
      mode: "add and set aside",
      today: until,
    });
    expect(result.kind).toBe("added");
  }
}, 300_000);
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface PlainUnit extends Record<string, unknown> {
  readonly unit_id: string;
  readonly model: string;
  readonly product_type: string;
  readonly serial: string;
  readonly begin: Day | null;
  readonly watched: Day | null;
  readonly end: Day | null;
}

interface PlainJob extends Record<string, unknown> {
  readonly unit_id: string;
  readonly component: string | null;
  readonly on: Day;
}

/** Straight from the rows of units and jobs; shares no code with counts, cells or lib/failures. */
async function plainRows() {
  return await readOnly(async (db) => ({
    units: await db.rows<PlainUnit>(sql`
      select u.unit_id::text, m.number as model, m.product_type, u.serial, u.in_service_on::text as begin,
        greatest(u.in_service_on, u.recorded_from, s.records_from)::text as watched, u.retired_on::text as end
      from units u join models m using (model_id) cross join shop s where u.in_register`),
    jobs: await db.rows<PlainJob>(sql`
      select unit_id::text, component, coalesce(requested_on, first_visit_on, completed_on)::text as on
      from jobs where status = 'closed' and cause = 'component' and component is not null`),
    uses: await db.rows<{ component: string; product_type: string }>(
      sql`select component, product_type from component_uses`,
    ),
    last: (
      await db.rows<{ last: Day }>(sql`
      select greatest((select max(completed_on) from jobs), (select max(retired_on) from units where in_register and in_service_on is not null))::text as last`)
    )[0]?.last,
  }));
}

function watchedDays(unit: PlainUnit, cutOff: Day): number {
  if (unit.begin === null || unit.watched === null) return 0;
  const end = unit.end !== null && unit.end < cutOff ? unit.end : cutOff;
  return Math.max(0, daysBetween(unit.watched, end));
}

describe("rates by component of the whole demo", () => {
  test("equal a plain recount from the raw rows", async () => {
    const { units, jobs, uses, last } = await plainRows();
    if (last === undefined) throw new Error("the demo has no day");
    const cutOff = addDays(last, 1);
    const view = await readOnly((db) => loadFailureRates(db, { by: "component" }, until));
    if (view.kind !== "rates") throw new Error("no rates");
    const document = ratesDocument(view.rates) as {
      rates: { group: { component: string }; failures: number; unitYears: number }[];
      until: Day;
    };
    expect(document.until).toBe(cutOff);
    const byId = new Map(units.map((unit) => [unit.unit_id, unit]));
    expect(document.rates.length).toBeGreaterThan(40);
    for (const { group, failures, unitYears } of document.rates) {
      const types = uses.filter((use) => use.component === group.component).map((use) => use.product_type);
      const own = units.filter((unit) => types.includes(unit.product_type));
      const days = own.reduce((sum, unit) => sum + watchedDays(unit, cutOff), 0);
      const counted = jobs.filter(({ unit_id, component, on }) => {
        const unit = byId.get(unit_id);
        if (
          component !== group.component ||
          unit === undefined ||
          unit.begin === null ||
          unit.watched === null ||
          watchedDays(unit, cutOff) === 0 ||
          !types.includes(unit.product_type)
        )
          return false;
        return on >= unit.watched && on < cutOff && (unit.end === null || on <= unit.end);
      });
      expect(failures, group.component).toBe(counted.length);
      expect(unitYears, group.component).toBeCloseTo(days / 365.25, 6);
    }
  });

  // Payers are read from the jobs themselves, not from the roll-ups: both ways must count the same jobs.
  test("by payer equal a count of the rows, and add up to the rates from the roll-ups", async () => {
    const whole = await readOnly((db) => loadFailureRates(db, { by: "component" }, until));
    const byPayer = await readOnly((db) => loadFailureRates(db, { by: "component,payer" }, until));
    if (whole.kind !== "rates" || byPayer.kind !== "rates") throw new Error("no rates");
    const sums = new Map<string, number>();
    const payers = new Map<string, number>();
    for (const { key, ...group } of byPayer.rates.groups) {
      const [component = "", payer = ""] = key.map(({ value }) => value);
      const events = group.kind === "rate" ? group.estimate.events : group.events;
      sums.set(component, (sums.get(component) ?? 0) + events);
      payers.set(payer, (payers.get(payer) ?? 0) + events);
    }
    for (const group of whole.rates.groups)
      expect(sums.get(group.key[0]?.value ?? ""), group.key[0]?.value).toBe(
        group.kind === "rate" ? group.estimate.events : group.events,
      );
    expect(byPayer.rates.leftOut).toEqual(whole.rates.leftOut);
    expect(byPayer.rates.fleet).toEqual(whole.rates.fleet);
    const rows = await readOnly((db) =>
      db.rows<{ payer: string; jobs: number }>(sql`
        select j.payer, count(*)::int as jobs from jobs j join units u using (unit_id) join models m using (model_id) cross join shop s
        where j.status = 'closed' and j.cause = 'component' and u.in_register and u.in_service_on is not null
          and coalesce(j.requested_on, j.first_visit_on, j.completed_on) >= greatest(u.in_service_on, u.recorded_from, s.records_from)
          and (u.retired_on is null or coalesce(j.requested_on, j.first_visit_on, j.completed_on) <= u.retired_on)
          and exists (select from component_uses c where c.component = j.component and c.product_type = m.product_type)
        group by 1`),
    );
    expect(rows.length).toBeGreaterThan(2);
    for (const { payer, jobs } of rows) expect(payers.get(payer), payer).toBe(jobs);
  });

  // 95 % limits around what was counted must hold the true expectation in most cells: 90 to 100 % of them.
  test("hold the true rates that the company was drawn from, at the stated frequency", async () => {
    const { units, jobs } = await plainRows();
    const cutOff = addDays(until, 1);
    const exposed: ExposedUnit[] = units.flatMap((unit) => {
      if (unit.begin === null || unit.watched === null || watchedDays(unit, cutOff) === 0) return [];
      const observedTo = unit.end !== null && unit.end < cutOff ? unit.end : cutOff;
      return [
        { model: unit.model, serial: unit.serial, inServiceOn: unit.begin, observedFrom: unit.watched, observedTo },
      ];
    });
    const typeOf = new Map(units.map((unit) => [unit.unit_id, unit.product_type]));
    const expected = new Map<string, number>();
    for (const row of expectedFailures(truth, exposed)) {
      const key = `${row.productType} ${row.component}`;
      expected.set(key, (expected.get(key) ?? 0) + row.expected);
    }
    const view = await readOnly((db) => loadFailureRates(db, { by: "component,type", to: until }, until));
    if (view.kind !== "rates") throw new Error("no rates");
    let held = 0;
    let tried = 0;
    for (const group of view.rates.groups) {
      const [component, type] = group.key.map((part) => part.value);
      const truly = expected.get(`${type} ${component}`);
      if (group.kind !== "rate" || truly === undefined || truly < 1) continue;
      tried++;
      const { low, high } = poissonRate({ events: group.estimate.events, exposure: 1, confidence: 0.95 });
      if (truly >= low && truly <= high) held++;
    }
    expect(typeOf.size).toBeGreaterThan(2500);
    expect(jobs.length).toBeGreaterThan(1000);
    expect(tried).toBeGreaterThan(40);
    expect(held / tried).toBeGreaterThanOrEqual(0.9);
  });
});
