// Speed as ratios measured in one run, and how cost grows over ten times the size. Nothing here fails on a slow machine.
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { sql } from "drizzle-orm";
import { closeDatabase } from "@/db/close-database";
import { copyInto } from "@/db/copy-into";
import { inTransaction } from "@/db/in-transaction";
import { migrateDatabase } from "@/db/migrate";
import { seedCatalogue } from "@/db/seed-catalogue";
import { loadFile } from "@/db/writes/load-file";
import { componentLife } from "@/lib/failures/component-life";
import { failureRates } from "@/lib/failures/failure-rates";
import { throwAwayDatabase } from "../database-server";
import { benchLives } from "./lives";
import { madeCells } from "./made-cells";

const medianOf = (times: readonly number[]) =>
  [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? Number.NaN;

/** Median time of a run; where there are several, after two that only warm the engine. */
async function milliseconds(work: () => unknown, runs = 7): Promise<number> {
  for (let warm = 0; runs > 1 && warm < 2; warm++) await work();
  const times: number[] = [];
  for (let run = 0; run < runs; run++) {
    const before = performance.now();
    await work();
    times.push(performance.now() - before);
  }
  return medianOf(times);
}

function say(what: string, value: string): void {
  console.log(`${what.padEnd(78)} ${value.padStart(14)}`);
}

async function ratesFromCounts(): Promise<void> {
  const until = 8000;
  const [small, large] = [madeCells(500, until), madeCells(5000, until)];
  const ask = (cells: typeof small) => () =>
    failureRates(cells, {
      by: ["component", "age"],
      counting: "failures",
      from: undefined,
      until,
      where: {},
      level: 0.95,
    });
  const life = (cells: typeof small) => () =>
    componentLife(cells, { component: "pump", from: undefined, until, where: {}, level: 0.95 });
  const rates = [await milliseconds(ask(small)), await milliseconds(ask(large))] as const;
  const lives = [await milliseconds(life(small)), await milliseconds(life(large))] as const;
  say("rates by component and age, 5,000 windows and 10,000 job cells", `${rates[1].toFixed(0)} ms`);
  say("  ten times the counts cost", `${(rates[1] / rates[0]).toFixed(1)} x`);
  say("curve, Weibull with profile limits and recurrence, the same counts", `${lives[1].toFixed(0)} ms`);
  say("  ten times the counts cost", `${(lives[1] / lives[0]).toFixed(1)} x`);
}

const header = "maker,model,product_type,serial,installed_on,retired_on";
const shop = {
  schema: "ohmsworth/shop/1",
  name: "Bench",
  currency: "USD",
  timeZone: "UTC",
  territory: "US",
  recordsFrom: null,
  madeGraceMonths: 3,
  demo: true,
};

function unitsCsv(rows: number): string {
  const lines = Array.from({ length: rows }, (_, index) => {
    const day = new Date(Date.UTC(2015, 0, 1 + (index % 3000))).toISOString().slice(0, 10);
    return `Bench Maker,BM${index % 20},dishwasher,BX${String(index).padStart(8, "0")},${day},`;
  });
  return `${header}\n${lines.join("\n")}\n`;
}

async function intakeAgainstCopy(folder: string): Promise<void> {
  const perRow: number[] = [];
  for (const rows of [4000, 40_000]) {
    await inTransaction(async (tx) => {
      await tx.execute(
        sql.raw(
          "truncate job_cells, repeated_jobs, unit_windows, unplaced_units, jobs, units, models, makers, held_rows, batch_changes, batches, shop cascade",
        ),
      );
      await tx.execute(
        sql.raw(
          "drop table if exists bare_copy; create unlogged table bare_copy (maker text, model text, product_type text, serial text, installed_on text, retired_on text)",
        ),
      );
    });
    const text = unitsCsv(rows);
    const path = join(folder, `units-${rows}.csv`);
    writeFileSync(path, text);
    writeFileSync(join(folder, "shop.json"), JSON.stringify(shop));
    await loadFile({ path: join(folder, "shop.json"), fileName: "shop.json", mode: "add" });
    const lines = text
      .split("\n")
      .slice(1, -1)
      .map((line) => `${line.replaceAll(",", "\t")}\n`);
    const target = { table: "bare_copy", columns: header.split(",") };
    const copy = await milliseconds(() => copyInto(target, lines, { timeoutSeconds: 300 }), 1);
    const load = await milliseconds(() => loadFile({ path, fileName: "units.csv", mode: "add" }), 1);
    perRow.push(load / rows);
    say(
      `units taken in whole, ${rows} rows, of bare COPY into an unlogged table`,
      `${(copy / load).toFixed(3)} of COPY`,
    );
    say("  rows a second", ((1000 * rows) / load).toFixed(0));
  }
  const [first = Number.NaN, second = Number.NaN] = perRow;
  say("  ten times the rows cost", `${((10 * second) / first).toFixed(1)} x`);
}

async function main(): Promise<void> {
  await ratesFromCounts();
  benchLives(say);
  const database = await throwAwayDatabase();
  process.env.DATABASE_URL = database.url;
  const folder = mkdtempSync(join(tmpdir(), "ohmsworth-bench-"));
  try {
    await migrateDatabase(database.url);
    await seedCatalogue();
    await intakeAgainstCopy(folder);
  } finally {
    await closeDatabase();
    await database.drop();
    rmSync(folder, { recursive: true, force: true });
  }
}

main().then(
  () => process.exit(0),
  (error: unknown) => {
    console.error(error);
    process.exit(1);
  },
);
