// Speed of taking files in, as a share of the speed at which the same bytes are copied into a bare table in the same run.
import { mkdtempSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { loadFile } from "@/db/writes/load-file";
import { bareCopy, seconds } from "./bare-copy";
import { withBenchCompany } from "./bench-company";
import { describeProcessor, processorSeconds, processorSince, StatementTimes, shareOf } from "./intake-profile";
import { jobColumns, partColumns, writeJobs, writePartLines } from "./intake-rows";
import { LoadWatch } from "./load-watch";
import { secondsOfReadyRows } from "./ready-rows";
import { say } from "./say";

/** @param most  rows of the largest file; a tenth of them are loaded first */
export async function intakeAgainstCopy(most = 1_000_000): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "ohmsworth-bench-"));
  const times: number[] = [];
  try {
    for (const rows of [most / 10, most]) times.push(await withBenchCompany(folder, () => firstLoad(folder, rows)));
    const [tenth = Number.NaN, whole = Number.NaN] = times;
    say("  ten times the rows cost", `${(whole / tenth).toFixed(1)} x`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function firstLoad(folder: string, rows: number): Promise<number> {
  const jobs = await timed(folder, { name: "jobs of 25 columns", write: writeJobs, columns: jobColumns, rows });
  const parts = await timed(folder, { name: "part lines", write: writePartLines, columns: partColumns, rows });
  say(
    "  both, with indexes, keys, counts and the way back",
    `${((jobs.copy + parts.copy) / (jobs.load + parts.load)).toFixed(3)} of COPY`,
  );
  const ready = await secondsOfReadyRows();
  const most = ((jobs.copy + parts.copy) / ready).toFixed(3);
  say("  the same rows, ready, into the same tables: no load can be quicker", `${ready.toFixed(1)} s, ${most} of COPY`);
  await overlap(folder, rows);
  return jobs.load + parts.load;
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
  const watch = new LoadWatch(profile ? 5_000 : 200); // what a reader uses would be taken for the statement's
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
