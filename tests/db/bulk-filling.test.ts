import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { sql } from "drizzle-orm";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { inTransaction } from "@/db/in-transaction";
import { loadFile } from "@/db/writes/load-file";
import { loadTable } from "@/db/writes/load-table";
import { recount } from "@/db/writes/recount";
import { takeBack } from "@/db/writes/take-back";
import { exportMatching, writeExport, writeJobs, writePartLines } from "../bench/intake-rows";
import { ownDatabaseUrl } from "../own-database";
import { batchOf, csv, fileFolder, job, shopDocument, startAfresh, unit } from "./intake-files";
import { counts } from "./load-outcome";
import { commaText } from "./table-files";

process.env.DATABASE_URL = ownDatabaseUrl(); // only the owner of the tables may fill new ones in their place

const files = fileFolder();
afterAll(async () => {
  files.remove();
  await closeDatabase();
});
beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
});

const rows = 24_000;
const load = (path: string) => loadFile({ path, fileName: "jobs.csv", mode: "add" });

const loadExport = (path: string) =>
  loadTable({ path, fileName: "export.csv", form: commaText, matching: exportMatching, mode: "add" });

async function written(write: typeof writeJobs, spread: Parameters<typeof writeJobs>[1]): Promise<string> {
  const path = join(files.folder, `${write.name}-${spread.from ?? 0}-${spread.rows}.csv`);
  await write(path, spread);
  return path;
}

/** Everything about the tables that a copy could lack. */
async function shapes() {
  return await readOnly((db) =>
    db.rows(sql`
      select c.relname as table, 'column' as what, a.attname as name, concat_ws(' ', format_type(a.atttypid, a.atttypmod), a.attnotnull, a.attgenerated, a.attidentity, pg_get_expr(d.adbin, d.adrelid)) as definition
      from pg_class c join pg_attribute a on a.attrelid = c.oid and a.attnum > 0 left join pg_attrdef d on d.adrelid = c.oid and d.adnum = a.attnum
      where c.relnamespace = 'public'::regnamespace and c.relkind = 'r'
      union all
      select conrelid::regclass::text, 'constraint', conname, pg_get_constraintdef(oid) || convalidated from pg_constraint where connamespace = 'public'::regnamespace
      union all
      select tablename, 'index', indexname, indexdef from pg_indexes where schemaname = 'public'
      union all
      select relname, 'grants', relname, relacl::text from pg_class where relnamespace = 'public'::regnamespace and relkind = 'r'
      union all
      select 'schema', 'schema', nspname, '' from pg_namespace where nspname !~ '^pg_(toast_)?temp'
      order by 1, 2, 3`),
  );
}

/** One number for all rows of each table, whatever their order; numbers that the database hands out are left out. */
async function prints() {
  const found = [];
  for (const table of [
    "units",
    "jobs",
    "part_lines",
    "job_cells",
    "unit_windows",
    "unplaced_units",
    "repeated_jobs",
    "suggested_callbacks",
  ])
    found.push(
      ...(await readOnly((db) =>
        db.rows(
          sql.raw(
            `select '${table}' as table, count(*)::integer as rows, coalesce(sum(hashtextextended((to_jsonb(t) - '{batch_id,model_id,maker_id}'::text[])::text, 0)::numeric), 0)::text as print from ${table} t`,
          ),
        ),
      )),
    );
  return found;
}

test("tables filled beside the empty ones are like them to the last constraint", async () => {
  const before = await shapes();
  expect(counts(await load(await written(writeJobs, { rows })))).toEqual([rows, rows, 0, 0, 0]);
  expect(counts(await load(await written(writePartLines, { rows })))).toEqual([rows, rows, 0, 0, 0]);
  expect(await shapes()).toEqual(before);
  expect((await recount()).every(({ differing }) => differing === 0)).toBe(true);
});

test("a first load leaves the rows, counts and way back that the same rows leave in small loads", async () => {
  const empty = await prints();
  const jobs = batchOf(await load(await written(writeJobs, { rows })));
  const parts = batchOf(await load(await written(writePartLines, { rows })));
  const filled = await prints();
  await takeBack(parts);
  await takeBack(jobs);
  expect(await prints()).toEqual(empty);
  const half = rows / 2;
  for (const write of [writeJobs, writePartLines])
    for (const from of [0, half]) await load(await written(write, { rows: half, from }));
  expect(await prints()).toEqual(filled);
}, 300_000);

test("somebody's own export leaves the rows, counts and way back that its halves leave, which fill no tables", async () => {
  const before = await shapes();
  const empty = await prints();
  const whole = batchOf(await loadExport(await written(writeExport, { rows })));
  const filled = await prints();
  expect(await shapes()).toEqual(before);
  expect((await recount()).every(({ differing }) => differing === 0)).toBe(true);
  await takeBack(whole);
  expect(await prints()).toEqual(empty);
  for (const from of [0, rows / 2]) await loadExport(await written(writeExport, { rows: rows / 2, from }));
  expect(await prints()).toEqual(filled);
}, 300_000);

test("a further load adds to what a first one filled", async () => {
  await load(await written(writeJobs, { rows }));
  const overlap = await written(writeJobs, { rows: 2000, from: rows - 1000 });
  expect(counts(await load(overlap))).toEqual([2000, 1000, 0, 1000, 0]);
  expect((await recount()).every(({ differing }) => differing === 0)).toBe(true);
});

test("units that only jobs tell of are placed as they are stored, with what the jobs say of them", async () => {
  const washer = { product_type: "front_load_washer", sold_on: "2022-02-02" };
  const told = Array.from({ length: rows }, (_, n) => job(`J${n}`, `S${n % 19_000}`, washer));
  expect(counts(await files.load(csv(told)))).toEqual([rows, rows, 0, 0, 0]);
  const placed = await readOnly((db) =>
    db.rows(
      sql`select in_service_on::text as on, in_service_basis as basis, sold_on::text as sold, count(*)::integer as units from units group by 1, 2, 3`,
    ),
  );
  expect(placed).toEqual([{ on: "2022-02-02", basis: "sold", sold: "2022-02-02", units: 19_000 }]);
  expect((await recount()).every(({ differing }) => differing === 0)).toBe(true);
});

test("jobs of which a register knows some units are counted with those", async () => {
  await files.load(csv(Array.from({ length: 300 }, (_, n) => unit(`S${n}`))));
  const known = Array.from({ length: rows }, (_, n) =>
    job(`J${n}`, `S${n % 19_000}`, { product_type: "front_load_washer" }),
  );
  expect(counts(await files.load(csv(known)))).toEqual([rows, rows, 0, 0, 0]);
  const [counted] = await readOnly((db) =>
    db.rows(
      sql`select sum(jobs)::integer as jobs, sum(jobs) filter (where in_service_on is not null)::integer as placed from job_cells`,
    ),
  );
  expect(counted).toEqual({ jobs: rows, placed: 600 });
  expect((await recount()).every(({ differing }) => differing === 0)).toBe(true);
});

test("a row that contradicts another holds a first load as it holds any", async () => {
  const path = await written(writeJobs, { rows });
  const text = readFileSync(path, "utf8");
  const [header = "", first = ""] = text.split("\r\n");
  writeFileSync(
    path,
    `${text}${first.replace("Technician 0", "Technician 1")}\r\n${header.replaceAll(/[^,]/g, "")}\r\n`,
  );
  const result = await loadFile({ path, fileName: "jobs.csv", mode: "add and set aside" });
  expect(counts(result)).toEqual([rows + 1, rows - 1, 0, 0, 2]);
  expect("report" in result && result.report.problems.map(({ row, problem }) => `${row} ${problem}`)).toEqual([
    `2 names the same job as row ${rows + 2}, with other values`,
    `${rows + 2} names the same job as row 2, with other values`,
  ]);
});

/** Waits on the server for the load to come to a statement that begins so, and ends its session. */
const endSession = (beginning: string) =>
  inTransaction(
    async (tx) =>
      void (await tx.execute(
        sql.raw(`do $$ begin
          for i in 1..60000 loop
            perform pg_stat_clear_snapshot();
            perform pg_terminate_backend(pid) from pg_stat_activity where datname = current_database() and pid <> pg_backend_pid()
              and application_name = 'ohmsworth write' and query ~ '^${beginning}' and state = 'active';
            if found then return; end if;
            perform pg_sleep(0.001);
          end loop;
          raise exception 'no such statement came';
        end $$`),
      )),
    { timeoutSeconds: 100 },
  );

test.each(["insert into jobs", "insert into job_cells"])(
  "a first load whose session is ended at %s leaves nothing, and can be repeated",
  async (statement) => {
    const path = await written(writeJobs, { rows });
    const [empty, shape] = [await prints(), await shapes()];
    const [first] = await Promise.allSettled([load(path), endSession(statement)]);
    expect(first.status).toBe("rejected");
    expect([await prints(), await shapes()]).toEqual([empty, shape]);
    expect(counts(await load(path))).toEqual([rows, rows, 0, 0, 0]);
  },
  300_000,
);
