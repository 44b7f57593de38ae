// The Repeats place as twenty people read it: what a view costs when it is asked for first, when it is asked for again, and
// how long each waits; at a tenth of the jobs and at all of them.
import { sql } from "drizzle-orm";
import { keptRecent } from "@/app/repeats/kept-recent";
import { keptViews } from "@/app/repeats/kept-views";
import { loadSignal } from "@/app/repeats/signals/[key]/load-signal";
import { currentRun } from "@/app/repeats/signals/current-run";
import { keptBias } from "@/app/repeats/signals/kept-bias";
import { loadVisits } from "@/app/repeats/visits/load-visits";
import { readOnly } from "@/db/client";
import { inTransaction } from "@/db/in-transaction";
import { refreshCounts } from "@/db/writes/refresh-counts";
import { day } from "@/lib/calendar/day";
import { minimalStandard } from "../minimal-standard";
import { onInventedCompany } from "./invented-company";
import { multiplyCompany } from "./multiply-company";
import { say } from "./say";
import { signalPage } from "./signal-page";

const until = day("2026-10-31");
const readers = 20;
const viewsEach = 15;
/** A reader looks at a view for up to so long before asking for the next. Own choice. */
const thinkMs = 1000;

/** @param jobs  at the most; a tenth of them is measured before, as a company of its own */
export async function benchRepeatsPages(jobs = 100_000): Promise<void> {
  for (const size of [jobs / 10, jobs]) await ofCompany(size);
}

async function ofCompany(jobs: number): Promise<void> {
  await onInventedCompany({ size: 0.25, until }, async (load) => {
    for (const name of ["shop.json", "units.csv", "jobs.csv"]) await load(name);
    await multiplyCompany(jobs);
    await inTransaction((tx) => refreshCounts(tx, "all"), { timeoutSeconds: 3600 });
    say(`the invented company with ${jobs} jobs or a few more`, "");
    await measureRepeats();
  });
}

/** Of the database that is set. */
export async function measureRepeats(): Promise<void> {
  const views = await viewsOfCompany();
  for (const time of ["first", "again"]) {
    for (const [name, work] of Object.entries(views)) {
      const [began, before] = [performance.now(), process.cpuUsage()];
      await work();
      const { user, system } = process.cpuUsage(before);
      const ms = (user + system) / 1000;
      say(
        `  ${name}, ${time}`,
        `${(performance.now() - began).toFixed(0)} ms by the clock, ${ms.toFixed(0)} ms of Node's processor time`,
      );
    }
  }
  const before = process.cpuUsage();
  const waits = await readAll(Object.values(views));
  const { user, system } = process.cpuUsage(before);
  const at = (share: number) => waits[Math.min(waits.length - 1, Math.floor(share * waits.length))] ?? Number.NaN;
  say(
    `  ${readers} readers, ${waits.length} views (wanted: 95 in 100 within 100 ms)`,
    `half within ${at(0.5).toFixed(0)} ms, 95 in 100 within ${at(0.95).toFixed(0)} ms, all within ${at(1).toFixed(0)} ms; ${((user + system) / 1000 / waits.length).toFixed(0)} ms of Node's processor time a view`,
  );
}

type Views = Readonly<Record<string, () => Promise<unknown>>>;

/** What each page reads and reckons, up to its drawing. */
async function viewsOfCompany(): Promise<Views> {
  const list = await currentRun(undefined);
  const [signal] = list.kind === "run" ? list.signals : [];
  const [failing] = await readOnly((db) =>
    db.rows<{ component: string }>(sql`
      select component from job_cells where counted_as = 'failure' group by 1 order by sum(jobs) desc limit 1`),
  );
  if (failing === undefined) throw new Error("the invented company has failures");
  const { component } = failing;
  const listOf = (values: Readonly<Record<string, string>>) => async () => {
    await currentRun(undefined);
    const view = await keptViews.rates(values);
    if (view.kind === "rates") await keptRecent(view.address.question);
    await keptBias();
  };
  return {
    "the list, by component": listOf({}),
    "the list, by model": listOf({ by: "model" }),
    "the list, by component and model": listOf({ by: "component,model" }),
    "the life of a component": () => keptViews.life(component, {}),
    "the life of a component, by age": () => keptViews.life(component, { rows: "age" }),
    "before and after a day": () => keptViews.comparison("before-after", component, { on: "2024-06-01" }),
    "first visits and returns": () => loadVisits({}),
    "first visits by technician": () => loadVisits({ by: "technician" }),
    "the page of a signal": signal === undefined ? await signalPage(until) : () => loadSignal(signal.key, undefined),
  };
}

/** Each person asks, waits for the answer, looks, and asks for another. @returns waits in ms, ascending */
async function readAll(views: readonly (() => Promise<unknown>)[]): Promise<number[]> {
  const waits: number[] = [];
  const person = async (_: unknown, number: number) => {
    const next = minimalStandard(1000 + number);
    for (let view = 0; view < viewsEach; view++) {
      await new Promise((resolve) => setTimeout(resolve, next() * thinkMs));
      const began = performance.now();
      await views[Math.floor(next() * views.length)]?.();
      waits.push(performance.now() - began);
    }
  };
  await Promise.all(Array.from({ length: readers }, person));
  return waits.toSorted((a, b) => a - b);
}
