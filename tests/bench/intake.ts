// Speed of taking files in, as a share of the speed at which the same bytes are copied into a bare table in the same run.
import { createReadStream, mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { sql } from "drizzle-orm";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { copyInto } from "@/db/copy-into";
import { inTransaction } from "@/db/in-transaction";
import { migrateDatabase } from "@/db/migrate";
import { seedCatalogue } from "@/db/seed-catalogue";
import { loadFile } from "@/db/writes/load-file";
import { throwAwayDatabase } from "../database-server";
import {
  describeProcessor,
  type Processor,
  processorSeconds,
  processorSince,
  StatementTimes,
  shareOf,
} from "./intake-profile";
import { jobColumns, partColumns, writeJobs, writePartLines } from "./intake-rows";
import { say } from "./say";

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

/** @param most  rows of the largest file; a tenth of them are loaded first */
export async function intakeAgainstCopy(most = 1_000_000): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "ohmsworth-bench-"));
  const times: number[] = [];
  try {
    for (const rows of [most / 10, most]) times.push(await firstLoad(folder, rows));
    const [tenth = Number.NaN, whole = Number.NaN] = times;
    say("  ten times the rows cost", `${(whole / tenth).toFixed(1)} x`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Each size has a database of its own, so that neither profits from what the other left in memory. */
async function firstLoad(folder: string, rows: number): Promise<number> {
  const given = process.env.DATABASE_URL;
  const database = await throwAwayDatabase();
  process.env.DATABASE_URL = database.url;
  try {
    await migrateDatabase(database.url);
    await seedCatalogue();
    const path = join(folder, "shop.json");
    writeFileSync(path, JSON.stringify(shop));
    await loadFile({ path, fileName: "shop.json", mode: "add" });
    const jobs = await timed(folder, { name: "jobs of 25 columns", write: writeJobs, columns: jobColumns, rows });
    const parts = await timed(folder, { name: "part lines", write: writePartLines, columns: partColumns, rows });
    say(
      "  both, with indexes, keys, counts and the way back",
      `${((jobs.copy + parts.copy) / (jobs.load + parts.load)).toFixed(3)} of COPY`,
    );
    await overlap(folder, rows);
    return jobs.load + parts.load;
  } finally {
    await closeDatabase();
    if (given === undefined) delete process.env.DATABASE_URL;
    else process.env.DATABASE_URL = given;
    await database.drop();
  }
}

interface File {
  readonly name: string;
  readonly write: typeof writeJobs;
  readonly columns: readonly string[];
  readonly rows: number;
}

async function timed(folder: string, { name, write, columns, rows }: File) {
  const path = join(folder, "rows.csv");
  await write(path, { rows });
  const before = await bareCopy(path, columns);
  const profile = process.argv.includes("--profile");
  const watch = new Watch(profile ? 5_000 : 200); // what a reader uses would be taken for the statement's
  const statements = profile ? await StatementTimes.ofServer() : undefined;
  const begun = await processorSeconds();
  statements?.begin();
  const load = await seconds(() => loadFile({ path, fileName: `${name}.csv`, mode: "add" }));
  statements?.end();
  const used = await processorSince(begun);
  const seen = await watch.end();
  const after = await bareCopy(path, columns);
  const copy = (before.taken + after.taken) / 2;
  say(
    `${rows} ${name}, ${(statSync(path).size / 1e6).toFixed(0)} MB, first load`,
    `${(copy / load).toFixed(3)} of COPY`,
  );
  say("  rows a second; COPY alone", `${(rows / load).toFixed(0)}; ${(rows / copy).toFixed(0)}`);
  say("  seconds; processor of the program and of the server", `${load.toFixed(1)}; ${describeProcessor(used)}`);
  say("  by processor seconds", `${shareOf(after.used, used)} of COPY`);
  say("  most memory of the process", `${seen.megabytes.toFixed(0)} MB`);
  say("  a list's query meanwhile: 95 % within, longest", `${seen.p95.toFixed(0)}, ${seen.longest.toFixed(0)} ms`);
  return { load, copy };
}

/** An ordinary batch: half of it is on file. */
async function overlap(folder: string, rows: number): Promise<void> {
  const size = Math.min(20_000, rows);
  const path = join(folder, "more.csv");
  await writeJobs(path, { rows: size, from: rows - size / 2 });
  const statements = process.argv.includes("--profile") ? await StatementTimes.ofServer() : undefined;
  statements?.begin();
  const load = await seconds(() => loadFile({ path, fileName: "more.csv", mode: "add" }));
  statements?.end();
  say(`  ${size} more jobs, half of them known: rows a second`, (size / load).toFixed(0));
}

interface Copied {
  readonly taken: number;
  readonly used: Processor;
}

async function bareCopy(path: string, columns: readonly string[]): Promise<Copied> {
  const typed = columns.map((column) => `${column} ${typeOf(column)}`).join(", ");
  await command(`drop table if exists bare_copy; create unlogged table bare_copy (${typed})`);
  const begun = await processorSeconds();
  const taken = await seconds(() =>
    copyInto(
      { table: "bare_copy", columns, format: "csv with header" },
      createReadStream(path, { highWaterMark: 1 << 20 }),
      {
        timeoutSeconds: 600,
      },
    ),
  );
  const used = await processorSince(begun);
  await command("drop table bare_copy");
  return { taken, used };
}

function typeOf(column: string): string {
  if (column.endsWith("_on")) return "date";
  if (["visits", "labour_minutes", "quantity", "line"].includes(column)) return "integer";
  return ["labour", "trip", "unit_cost"].includes(column) ? "numeric" : "text";
}

async function command(text: string): Promise<void> {
  await inTransaction(async (tx) => void (await tx.execute(sql.raw(text))));
}

async function seconds(work: () => Promise<unknown>): Promise<number> {
  const before = performance.now();
  await work();
  return (performance.now() - before) / 1000;
}

/** Looks at the process's memory and asks what a page would ask, again and again, until it is told to end. */
class Watch {
  #going = true;
  #megabytes = 0;
  readonly #waits: number[] = [];
  readonly #pauseMs: number;
  readonly #done: Promise<void>;

  constructor(pauseMs: number) {
    this.#pauseMs = pauseMs;
    this.#done = this.#look();
  }

  async end() {
    this.#going = false;
    await this.#done;
    const waits = this.#waits.toSorted((a, b) => a - b);
    return {
      megabytes: this.#megabytes,
      p95: waits[Math.floor(waits.length * 0.95)] ?? Number.NaN,
      longest: waits.at(-1) ?? Number.NaN,
    };
  }

  async #look(): Promise<void> {
    while (this.#going) {
      this.#megabytes = Math.max(this.#megabytes, process.memoryUsage().rss / 1e6);
      const before = performance.now();
      await readOnly((db) =>
        db.rows(
          sql`select j.job_number, u.serial from jobs j join units u using (unit_id) order by j.completed_on desc limit 50`,
        ),
      );
      this.#waits.push(performance.now() - before);
      await pause(this.#pauseMs);
    }
  }
}
