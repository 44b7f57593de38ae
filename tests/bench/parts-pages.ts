// The Parts place on the invented company at its full size: working all of it out, reading its pages, changing one job.
import { sql } from "drizzle-orm";
import { loadPart } from "@/app/parts/[part]/load-part";
import { loadPartsMoney } from "@/app/parts/money/load-money";
import { partRows } from "@/app/parts/parts-view";
import { readOnly } from "@/db/client";
import { loadOutlookState, loadPartList } from "@/db/queries/part-list";
import { editJob } from "@/db/writes/edit-job";
import { workOutOutlooks } from "@/db/writes/parts/settle-outlooks";
import { day } from "@/lib/calendar/day";
import { onInventedCompany } from "./invented-company";
import { say } from "./say";

const until = day("2026-10-31");
const files = ["shop.json", "units.csv", "jobs.csv", "part-lines.csv", "parts.csv", "policies.json"];

/** @param size of the company; 1 is some 12,000 machines and 15,000 jobs */
export async function benchPartsPages(size = 1): Promise<void> {
  await onInventedCompany({ size, until }, async (load) => {
    for (const name of files) await load(name);
    await measure();
  });
}

async function measure(): Promise<void> {
  const all = await timed(() => workOutOutlooks(until, { anew: true }));
  say("every part worked out, machines and back-tests included", figures(all));
  const again = await timed(() => workOutOutlooks(until));
  say("  again, from unchanged records", figures(again));
  const parts = await readOnly((db) => loadPartList(db));
  const busiest = parts.toSorted((a, b) => b.usedLastYear - a.usedLastYear)[0];
  if (busiest === undefined) throw new Error("the invented company uses no parts");
  const reading = {
    [`the list of ${parts.length} parts (wanted: 100 ms)`]: () =>
      readOnly(async (db) => [await loadOutlookState(db), partRows(await loadPartList(db))]),
    "one part (wanted: 100 ms)": () => readOnly((db) => loadPart(db, busiest.partNumber)),
    "money in parts (wanted: 100 ms)": () => readOnly(loadPartsMoney),
  };
  for (const [name, work] of Object.entries(reading)) say(`read and reckoned for ${name}`, figures(await median(work)));
  const jobs = await readOnly((db) =>
    // Completed on the last day of a month: a day later, its parts count for the next.
    db.rows<{ number: string; later: string }>(sql`
      select job_number as number, (completed_on + 1)::text as later from jobs j where counted_as = 'failure'
        and extract(day from completed_on + 1) = 1 and completed_on < ${until}::date - 60 and (invoiced_on is null or invoiced_on > completed_on)
        and exists (select from part_lines p where p.unit_id = j.unit_id and p.job_id = j.job_id and p.role = 'fitted')
      order by job_number limit 9`),
  );
  let next = 0;
  const changed = await median(async () => {
    const { number = "", later = "" } = jobs[next++ % jobs.length] ?? {};
    const result = await editJob({
      jobNumber: number,
      column: "completed_on",
      value: later,
      by: "bench",
      reason: "bench",
    });
    if (result.kind !== "edited") throw new Error(`${number}: ${result.kind}`);
  });
  say("one changed job, its parts and their machines worked out anew (wanted: 1 s)", figures(changed));
}

interface Spent {
  readonly wall: number;
  readonly processor: number;
}

async function timed(work: () => Promise<unknown>): Promise<Spent> {
  const [began, before] = [performance.now(), process.cpuUsage()];
  await work();
  const { user, system } = process.cpuUsage(before);
  return { wall: performance.now() - began, processor: (user + system) / 1000 };
}

/** Of seven, after two that only warm the engine. */
async function median(work: () => Promise<unknown>): Promise<Spent> {
  const runs: Spent[] = [];
  for (let run = 0; run < 9; run++) runs.push(await timed(work));
  const middle = (of: keyof Spent) =>
    runs
      .slice(2)
      .map((run) => run[of])
      .toSorted((a, b) => a - b)[3] ?? Number.NaN;
  return { wall: middle("wall"), processor: middle("processor") };
}

function figures({ wall, processor }: Spent): string {
  return `${wall.toFixed(0)} ms by the clock, ${processor.toFixed(0)} ms of Node's processor time`;
}
