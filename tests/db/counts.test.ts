import { sql } from "drizzle-orm";
import { afterAll, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { csv, fileFolder, job, shopDocument, startAfresh, unit } from "./intake-files";

const files = fileFolder();
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

const causes = ["component", "component", "foreign_object", "no_fault_found"];
const models = ["FW5500", "FW7700"];
const dayOf = (number: number) => new Date(Date.UTC(2021, 0, 1 + number)).toISOString().slice(0, 10);

/** Days, causes and models by remainders: every combination comes up, and the same file each time. */
const units = Array.from({ length: 200 }, (_, i) =>
  unit(`S${i}`, {
    model: models[i % 2] ?? "",
    made: "",
    installed_on: i % 11 === 0 ? "" : dayOf((i % 9) * 100),
    retired_on: i % 5 === 0 ? dayOf(300 + (i % 9) * 150) : "",
  }),
);
const jobs = Array.from({ length: 500 }, (_, i) =>
  job(i === 7 ? "J7" : `J${i}`, `S${(i * i) % 230}`, {
    model: models[((i * i) % 230) % 2] ?? "",
    product_type: "front_load_washer",
    requested_on: dayOf(200 + ((i * 7) % 40) * 30),
    completed_on: dayOf(203 + ((i * 7) % 40) * 30),
    cause: causes[i % 4] ?? "",
    component: i % 3 === 0 ? "door_lock" : "drain_pump",
    status: i % 17 === 0 ? "void" : "closed",
  }),
);

interface StoredUnit extends Record<string, unknown> {
  readonly id: string;
  readonly register: boolean;
  readonly service: string | null;
  readonly retired: string | null;
}
interface StoredJob extends Record<string, unknown> {
  readonly unit: string;
  readonly job: string;
  readonly component: string;
  readonly cause: string;
  readonly status: string;
  readonly failed: string;
}

function tally(keys: readonly string[]): string[] {
  const found = new Map<string, number>();
  for (const key of keys) found.set(key, (found.get(key) ?? 0) + 1);
  return [...found].map(([key, count]) => `${key} ${count}`).toSorted();
}

// By definition, from the rows and with separate code: the window begins at the later of service and records.
test("windows and cells equal a count from the raw rows in another language", async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  expect(await files.load(csv(units))).toMatchObject({ kind: "added" });
  expect(await files.load(csv(jobs))).toMatchObject({ kind: "added" });
  const { stored, done, windows, cells } = await readOnly(async (db) => ({
    stored: await db.rows<StoredUnit>(
      sql`select unit_id::text as id, in_register as register, in_service_on::text as service, retired_on::text as retired from units`,
    ),
    done: await db.rows<StoredJob>(
      sql`select unit_id::text as unit, job_id::text as job, component, cause, status, requested_on::text as failed from jobs`,
    ),
    windows: await db.rows<{ key: string }>(
      sql`select concat_ws(' ', in_service_on, observed_from, coalesce(retired_on::text, '-'), sum(units)) as key from unit_windows group by in_service_on, observed_from, retired_on`,
    ),
    cells: await db.rows<{
      key: string;
    }>(sql`select concat_ws(' ', component, cause, counted_as, coalesce(in_service_on::text, '-'), coalesce(observed_from::text, '-'), coalesce(retired_on::text, '-'), failed_on, coalesce(previous_failed_on::text, '-'), sum(jobs)) as key
      from job_cells group by component, cause, counted_as, in_service_on, observed_from, retired_on, failed_on, previous_failed_on`),
  }));
  const placed = new Map(stored.map((row) => [row.id, windowOf(row)]));
  expect(windows.map(({ key }) => key).toSorted()).toEqual(
    tally([...placed.values()].filter((window) => window !== "- - -")),
  );
  expect(cells.map(({ key }) => key).toSorted()).toEqual(tally(cellKeys(done, placed)));
  expect(windows.length).toBeGreaterThan(10);
  expect(cells.length).toBeGreaterThan(100);
});

function windowOf({ register, service, retired }: StoredUnit): string {
  const from = service !== null && service > "2022-06-01" ? service : "2022-06-01";
  const watched = register && service !== null && (retired === null || retired >= from);
  return watched ? `${service} ${from} ${retired ?? "-"}` : "- - -";
}

function cellKeys(done: readonly StoredJob[], placed: ReadonlyMap<string, string>): string[] {
  const last = new Map<string, string>();
  return done
    .filter(({ status }) => status === "closed")
    .toSorted((a, b) => a.failed.localeCompare(b.failed) || Number(BigInt(a.job) - BigInt(b.job)))
    .map(({ unit: id, component, cause, failed }) => {
      const isFailure = cause === "component";
      const spell = `${id} ${component}`;
      const previous = isFailure ? (last.get(spell) ?? "-") : "-";
      if (isFailure) last.set(spell, failed);
      return `${component} ${cause} ${isFailure ? "failure" : "call"} ${placed.get(id)} ${failed} ${previous}`;
    });
}
