// Covered work without its pay over the invented company many times over: all of it judged, and one job changed.
import { join } from "node:path";
import { sql } from "drizzle-orm";
import { bundleCommands } from "@/app/commands/start/bundle-commands.mjs";
import { readOnly } from "@/db/client";
import { inTransaction } from "@/db/in-transaction";
import { editJob } from "@/db/writes/edit-job";
import { rebuildUnclaimed } from "@/db/writes/money/rebuild-unclaimed";
import { refreshUnclaimed } from "@/db/writes/money/refresh-unclaimed";
import { day } from "@/lib/calendar/day";
import { onInventedCompany } from "./invented-company";
import { multiplyCompany } from "./multiply-company";
import { say } from "./say";

const until = day("2026-10-31");
/** Terms come last: until then nothing is covered, and nothing is judged. */
const files = [
  "shop.json",
  "units.csv",
  "contracts.csv",
  "jobs.csv",
  "part-lines.csv",
  "readings.csv",
  "ranges.csv",
  "photos.csv",
];

/** @param jobs  how many at least */
export async function benchUnclaimed(jobs = 1_000_000): Promise<void> {
  await onInventedCompany({ size: 1, until }, async (load) => {
    for (const name of files) await load(name);
    await multiplyCompany(jobs);
    await load("policies.json");
    await measure();
  });
}

/** Threads run what is bundled, as those of the site do. */
async function bundledThread(): Promise<string> {
  const folder = join("node_modules", ".cache", "ohmsworth-bench");
  await bundleCommands(["db/writes/money/judging-thread.ts"], folder);
  return join(folder, "judging-thread.mjs");
}

async function measure(): Promise<void> {
  const thread = await bundledThread();
  const [all] = await readOnly((db) => db.rows<{ jobs: number }>(sql`select count(*)::int as jobs from jobs`));
  await emptied();
  const first = await timed(() => rebuildUnclaimed({ thread }));
  say(
    `covered work of ${all?.jobs} jobs judged, from nothing (wanted for 1,000,000: 30 s)`,
    `${first.wall.toFixed(1)} s`,
  );
  say("  cases found; processor seconds of this process", `${first.result}; ${first.busy.toFixed(1)}`);
  const again = await timed(() => rebuildUnclaimed({ thread }));
  say("  judged once more, nothing having changed", `${again.wall.toFixed(1)} s`);
  await oneJob();
}

async function emptied(): Promise<void> {
  await inTransaction(async (tx) => void (await tx.execute(sql`truncate unclaimed_work`)));
}

/** What an edit of a job costs with everything that follows from it, and what of it is the judging. */
async function oneJob(): Promise<void> {
  const jobs = await readOnly((db) =>
    db.rows<{ number: string; unit: string }>(
      sql`select j.job_number as number, w.unit_id::text as unit from unclaimed_work w join jobs j using (unit_id, job_id) order by 1 limit 60`,
    ),
  );
  const judging: number[] = [];
  for (const { unit } of jobs)
    judging.push((await timed(() => inTransaction((tx) => refreshUnclaimed(tx, [unit])))).wall);
  const edits: number[] = [];
  for (const { number } of jobs.slice(0, 10)) {
    const edit = { jobNumber: number, column: "cause_note", value: "Looked at again.", by: "Bench", reason: "Bench" };
    edits.push((await timed(() => editJob(edit))).wall);
  }
  say("  one changed job judged anew, median of 60 (wanted: 50 ms)", milliseconds(judging));
  say("  a field of a job edited, with its counts", milliseconds(edits));
}

function milliseconds(seconds: readonly number[]): string {
  const sorted = seconds.toSorted((a, b) => a - b);
  return `${(1000 * (sorted[Math.floor(sorted.length / 2)] ?? Number.NaN)).toFixed(0)} ms`;
}

async function timed<T>(work: () => Promise<T>) {
  const before = performance.now();
  const used = process.cpuUsage();
  const result = await work();
  const { user, system } = process.cpuUsage(used);
  return { result, wall: (performance.now() - before) / 1000, busy: (user + system) / 1_000_000 };
}
