// What is expected of parts follows what jobs say: soon after a change of a few, by a process of its own after many.
import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import { normalised } from "@/lib/domain/normalised";
import { learnDemand } from "@/lib/forecast/forecast-demand";
import { forecastMonth, monthsBetween } from "@/lib/forecast/forecast-month";
import { storedKnowledge } from "@/lib/forecast/stored-knowledge";
import type { Transaction } from "../../database-types";
import { inTransaction } from "../../in-transaction";
import { loadPartCatalogue } from "../../queries/part-catalogue";
import { loadNumberUse } from "../../queries/part-histories";
import { demandKnowledge } from "../../schema/outlooks";
import { learnSeasons } from "./learn-seasons";
import { everyPart } from "./mark-parts";
import { loadKnowledge, loadOutlookSetting, type OutlookSetting } from "./outlook-setting";
import { postJobUse } from "./post-job-use";
import { refreshTotals } from "./refresh-totals";
import { workOutParts } from "./work-out-parts";

/** Any number will do as long as it never changes: one at a time works parts out. */
const outlookLock = 7_016_080;

/** As many marked numbers as are worked out right after the change. */
const few = 60;

/**
 * Works out the parts whose use was marked as changed, as of the month and day for which the others are. Does nothing
 * where they are many, or none were ever worked out: that is left to `workOutOutlooks`.
 */
export async function settleOutlooks(): Promise<void> {
  await inTransaction(async (tx) => {
    const marked = await markedNumbers(tx, few + 1);
    if (marked.length === 0 || marked.length > few || marked.includes(everyPart)) return;
    await takeLock(tx);
    const taken = await takeMarks(tx, few);
    const kept = await loadKnowledge(tx);
    const setting = kept && (await loadOutlookSetting(tx, kept.forecastFrom));
    const [planned] = await tx.rows<{ on: Day | null }>(sql`select max(planned_on)::text as on from part_plans`);
    if (kept === undefined || setting === undefined || !planned?.on) {
      await putBack(tx, taken);
      return;
    }
    const own = [...new Set(taken.map((number) => setting.families.currentOf(normalised(number))))];
    const { near, later } = await sharingMachines(tx, own);
    await putBack(tx, later);
    const current = [...own, ...near].toSorted();
    const gone = current.filter((key) => !setting.spellings.has(key));
    await tx.rows(sql`delete from part_plans where part_key = any(${sql.param(gone)}::text[])`);
    await tx.rows(sql`delete from part_outlooks where part_key = any(${sql.param(gone)}::text[])`);
    const there = current.filter((key) => setting.spellings.has(key));
    await workOutParts(tx, there, { setting, kept, today: planned.on });
    await postJobUse(tx, taken);
    await refreshTotals(tx);
  });
}

/** Other parts of the same components, as far as there is time for them; the numbers of the rest. */
async function sharingMachines(tx: Transaction, keys: readonly string[]) {
  const rows = await tx.rows<{ key: string; numbers: string[] }>(sql`
    select part_key as key, spellings as numbers from part_outlooks where part_key <> all(${sql.param([...keys])}::text[])
      and component in (select component from part_outlooks where part_key = any(${sql.param([...keys])}::text[])) order by 1`);
  const room = Math.max(0, few - keys.length);
  return {
    near: rows.slice(0, room).map(({ key }) => key),
    later: rows.slice(room).flatMap(({ numbers }) => numbers),
  };
}

export interface WorkedOut {
  readonly parts: number;
  readonly changed: number;
}

/** How many parts are worked out in one transaction: those who change a job wait no longer than for these. */
const atOnce = 40;

/**
 * Works out every part as of today; those from unchanged records stay as they are, unless it is to be all `anew`.
 * @returns nothing to work out: no parts
 */
export async function workOutOutlooks(
  today: Day,
  {
    anew = false,
    onProgress,
  }: { readonly anew?: boolean; readonly onProgress?: (done: number, of: number) => void } = {},
): Promise<WorkedOut> {
  const forecastFrom = forecastMonth(today);
  const keys = await inTransaction((tx) => prepare(tx, forecastFrom, anew), { timeoutSeconds: 600 });
  await inTransaction((tx) => learnOnce(tx, forecastFrom, anew), { timeoutSeconds: 600 });
  let changed = 0;
  for (let at = 0; at < keys.length; at += atOnce) {
    onProgress?.(at, keys.length);
    changed += await inTransaction((tx) => workOutSome(tx, keys.slice(at, at + atOnce), today), {
      timeoutSeconds: 600,
    });
  }
  await inTransaction(
    async (tx) => {
      await takeLock(tx);
      await refreshTotals(tx);
    },
    { timeoutSeconds: 600 },
  );
  return { parts: keys.length, changed };
}

/** Marks every number, so that what is cut off half-way is gone on with, and drops the outlooks of numbers that are gone. */
async function prepare(tx: Transaction, forecastFrom: Day, anew: boolean): Promise<readonly string[]> {
  await takeLock(tx);
  await tx.rows(sql`delete from parts_to_forecast`);
  const setting = await loadOutlookSetting(tx, forecastFrom);
  const keys =
    setting === undefined ? [] : await byComponent(tx, [...setting.spellings.keys()].toSorted(), forecastFrom);
  await putBack(tx, setting === undefined ? [] : [...setting.spellings.values()].flat());
  await tx.rows(sql`delete from part_plans where part_key <> all(${sql.param(keys)}::text[])`);
  await tx.rows(sql`delete from part_outlooks where part_key <> all(${sql.param(keys)}::text[])`);
  if (anew) await tx.rows(sql`update part_outlooks set data_version = 'to be worked out'`);
  return keys;
}

/** Parts of one component after each other: the machines that carry it are read once for all that are worked out together. */
async function byComponent(tx: Transaction, keys: readonly string[], on: Day): Promise<readonly string[]> {
  const { entries } = await loadPartCatalogue(tx, on, keys);
  const componentOf = (key: string) => entries.get(key)?.component ?? "";
  return keys.toSorted((a, b) => componentOf(a).localeCompare(componentOf(b), "en"));
}

/** Learns once a month from all parts. */
async function learnOnce(tx: Transaction, forecastFrom: Day, anew: boolean): Promise<void> {
  const kept = await loadKnowledge(tx);
  if (!anew && kept?.forecastFrom === forecastFrom) return;
  const setting = await loadOutlookSetting(tx, forecastFrom);
  if (setting !== undefined) await learn(tx, setting);
}

async function learn(tx: Transaction, setting: OutlookSetting): Promise<void> {
  const use = new Map((await loadNumberUse(tx, setting.span)).map((each) => [each.partNumber, each]));
  const months = monthsBetween(setting.span.from, setting.span.until);
  const histories = [...setting.spellings]
    .toSorted(([a], [b]) => a.localeCompare(b))
    .map(([, numbers]) =>
      Array.from({ length: months }, (_, month) =>
        numbers.reduce((sum, number) => sum + (use.get(number)?.months.get(month) ?? 0), 0),
      ),
    );
  const row = {
    forecastFrom: setting.span.until,
    knowledge: { ...storedKnowledge(learnDemand(histories)), seasons: await learnSeasons(tx, setting.span.until) },
    learntAt: sql`now()`,
  };
  await tx.insert(demandKnowledge).values(row).onConflictDoUpdate({ target: demandKnowledge.only, set: row });
}

async function workOutSome(tx: Transaction, keys: readonly string[], today: Day): Promise<number> {
  await takeLock(tx);
  const kept = await loadKnowledge(tx);
  const setting = kept && (await loadOutlookSetting(tx, kept.forecastFrom));
  if (kept === undefined || setting === undefined) return 0;
  const numbers = keys.flatMap((key) => setting.spellings.get(key) ?? []);
  // Before their use is read: a change that comes in after this marks them again.
  await tx.rows(sql`delete from parts_to_forecast where part_number = any(${sql.param(numbers)}::text[])`);
  const changed = await workOutParts(tx, keys, { setting, kept, today });
  await postJobUse(tx, numbers);
  return changed;
}

async function takeLock(tx: Transaction): Promise<void> {
  await tx.rows(sql`select pg_advisory_xact_lock(${outlookLock})::text`);
}

async function markedNumbers(tx: Transaction, most: number): Promise<string[]> {
  const rows = await tx.rows<{ part_number: string }>(sql`select part_number from parts_to_forecast limit ${most}`);
  return rows.map(({ part_number }) => part_number);
}

/** Marks are taken before anything is read: whoever marks the same number meanwhile waits, and it is marked again. */
async function takeMarks(tx: Transaction, most: number): Promise<string[]> {
  const rows = await tx.rows<{ part_number: string }>(sql`
    delete from parts_to_forecast where part_number in (select part_number from parts_to_forecast order by 1 limit ${most}) returning part_number`);
  return rows.map(({ part_number }) => part_number);
}

async function putBack(tx: Transaction, numbers: readonly string[]): Promise<void> {
  await tx.rows(sql`
    insert into parts_to_forecast select unnest(${sql.param([...numbers])}::text[]) on conflict do nothing`);
}
