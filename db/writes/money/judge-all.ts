import { existsSync } from "node:fs";
import { availableParallelism } from "node:os";
import { join, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { Worker } from "node:worker_threads";
import { sql } from "drizzle-orm";
import { readOnly } from "../../client";
import { databaseUrl } from "../../connection";
import { anyPolicy } from "../../queries/policies";
import { type JudgingShare, judgeShare } from "./judge-share";

/** From this many units on, threads are worth their start: it costs each as much as judging some thousands of units. */
const manyUnits = 20_000;
/** Reading and sorting what they ask for keeps the server busy too. */
const mostThreads = 4;
/** Units read and judged at once: enough that a read is worth asking for, few enough that memory holds several. */
const unitsAtOnce = 4_000;

export interface Threads {
  /** How many; absent, as many as the units are worth. */
  readonly threads?: number;
  /** Path of what a thread runs; absent, what was bundled with the site, or else the source. */
  readonly thread?: string;
}

/**
 * Judges every unit and copies the rows into a table that nobody else uses. Many units are shared out among threads, so
 * that a site which does this goes on answering.
 * @returns how many rows came
 */
export async function judgeAllInto(table: string, { threads, thread }: Threads = {}): Promise<number> {
  const units = await readOnly(async (db) => {
    const [found] = await db.rows<{ units: number }>(sql`select count(*)::integer as units from units`);
    return (await anyPolicy(db)) ? (found?.units ?? 0) : 0;
  });
  if (units === 0) return 0;
  const shares = threads ?? (units < manyUnits ? 0 : Math.min(mostThreads, availableParallelism()));
  const runs = Math.max(1, Math.ceil(units / unitsAtOnce));
  if (shares === 0) return await judgeShare({ table, runs, share: 0, shares: 1 });
  const url = await databaseUrl();
  const program = thread ?? threadProgram();
  const told = Array.from({ length: shares }, (_, share) => inThread({ table, runs, share, shares }, { url, program }));
  return (await Promise.all(told)).reduce((sum, rows) => sum + rows, 0);
}

/** A thread's own heap for what lives shortly: most of what is read and judged is gone with its run. */
const youngMegabytes = 128;

/** From the folder the app is started in, and by code that the bundler does not read: it would bundle what it finds there. */
function threadProgram(): string {
  const bundled = join(".next", "commands", "judging-thread.mjs");
  if (process.env.NODE_ENV === "production" && existsSync(/* turbopackIgnore: true */ bundled)) return bundled;
  return join("db", "writes", "money", "judging-thread-from-source.mjs");
}

function inThread(share: JudgingShare, { url, program }: { readonly url: string; readonly program: string }) {
  const file = pathToFileURL(resolve(/* turbopackIgnore: true */ process.cwd(), program));
  const worker = new Worker(`import(${JSON.stringify(file.href)})`, {
    eval: true,
    workerData: share,
    env: { ...process.env, DATABASE_URL: url },
    resourceLimits: { maxYoungGenerationSizeMb: youngMegabytes },
  });
  return new Promise<number>((done, reject) => {
    worker.once("message", (rows: number) => done(rows)); // the thread sends nothing else
    worker.once("error", reject);
    worker.once("exit", (code) => reject(new Error(`A thread that judged units ended early, with code ${code}.`)));
  });
}
