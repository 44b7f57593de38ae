import { readOnly } from "@/db/client";
import { loadCountedState } from "@/db/queries/counted-state";
import { loadCatalogueWords } from "@/db/queries/known-words";
import { loadShop } from "@/db/queries/shop";
import { countPlacedUnits, loadRun, loadSignals, type StoredRun, type StoredSignal } from "@/db/queries/signal-list";
import { loadSignalRecord } from "@/db/queries/signal-record";
import { storeRun } from "@/db/writes/signals/store-run";
import { addDays, type Day } from "@/lib/calendar/day";
import { dayFromNumber, dayNumber } from "@/lib/calendar/day-number";
import { signalRun } from "@/lib/signals/signal-run";
import { lastDayOf, lastWholeWeek } from "@/lib/signals/weeks";
import { keptAnswers } from "../kept-answers";
import { workOutByQuarter } from "./work-out-by-quarter";

export type CurrentRun =
  | {
      readonly kind: "run";
      readonly run: StoredRun;
      readonly signals: readonly StoredSignal[];
      /** Data changed since: these figures are the last that were worked out. */
      readonly outdated: boolean;
      /** Asked for an earlier day than the data's last. */
      readonly past: boolean;
    }
  | { readonly kind: "no-data" }
  | { readonly kind: "before-first-job"; readonly asked: Day; readonly firstOn: Day | undefined };

interface Standing {
  readonly timeZone: string;
  readonly cutOff: Day | undefined;
  readonly basis: string;
  readonly units: number;
}

const kept = keptAnswers<Standing>();

/** Above this many units a page shows the last run and leaves the work to the night, or to the command. */
const mostUnitsOnAPage = 200_000;

/**
 * Signals as of the end of the last whole week of a day; worked out now where the stored ones rest on other data.
 * @param asked  undefined: the last day that the data tell of
 */
export async function currentRun(asked: Day | undefined, key?: string): Promise<CurrentRun> {
  const known = await loadStanding();
  if (known.cutOff === undefined) return { kind: "no-data" };
  const last = addDays(known.cutOff, -1);
  const on = asked === undefined || asked > last ? last : asked;
  const asOf = dayFromNumber(lastDayOf(lastWholeWeek(dayNumber(on))));
  const stored = await readOnly((db) => loadRun(db, asOf));
  const fresh = stored?.asOf === asOf && stored.basis === known.basis;
  if (!fresh && known.units <= mostUnitsOnAPage) {
    const worked = await workOut({ on, timeZone: known.timeZone, basis: known.basis });
    if (worked.kind === "before-first-job") return { ...worked, asked: on };
  }
  return await readOnly(async (db): Promise<CurrentRun> => {
    const run = await loadRun(db, asOf);
    if (run === undefined) return { kind: "no-data" };
    const past = on < last;
    const saidUntil = past ? `${addDays(on, 1)}T00:00:00Z` : undefined;
    const signals = await loadSignals(db, run.asOf, saidUntil, key);
    return { kind: "run", run, signals, outdated: run.asOf !== asOf || run.basis !== known.basis, past };
  });
}

/**
 * Works out the signals of the last whole week where those on file rest on other data, however many units there are: what a
 * page leaves to the night. What is settled is kept, so that until its quarter ends only the weeks since are read.
 */
export async function settleSignals(): Promise<"worked out" | "brought up to date" | "standing" | "no data"> {
  const { cutOff, basis, timeZone } = await loadStanding();
  if (cutOff === undefined) return "no data";
  const on = addDays(cutOff, -1);
  const asOf = dayFromNumber(lastDayOf(lastWholeWeek(dayNumber(on))));
  const stored = await readOnly((db) => loadRun(db, asOf));
  if (stored?.asOf === asOf && stored.basis === basis) return "standing";
  const { run, ...worked } = await workOutByQuarter({ on, timeZone });
  if (run === undefined) return "no data";
  await storeRun({ asOf, basis, run });
  return worked.kind;
}

async function loadStanding(): Promise<Standing> {
  return await kept("standing", async (db, today) => {
    const { timeZone } = await loadShop(db);
    const { cutOff } = await loadCatalogueWords(db, today);
    const standing = { timeZone, cutOff, basis: await loadCountedState(db), units: await countPlacedUnits(db) };
    return () => standing;
  });
}

interface Work {
  readonly on: Day;
  readonly timeZone: string;
  readonly basis: string;
}

const underWay = new Map<string, ReturnType<typeof computeAndKeep>>();

/** Computes and keeps the signals of one day. Who asks meanwhile waits for the same: it takes a second of processor time. */
async function workOut(work: Work) {
  const key = JSON.stringify(work);
  const begun = underWay.get(key) ?? computeAndKeep(work).finally(() => underWay.delete(key));
  underWay.set(key, begun);
  return await begun;
}

async function computeAndKeep({ on, timeZone, basis }: Work) {
  const loaded = await readOnly((db) => loadSignalRecord(db, { on, timeZone }), { timeoutSeconds: 300 });
  if (loaded.kind === "before-first-job") return loaded;
  const run = signalRun(loaded.record);
  await storeRun({ asOf: loaded.asOf, basis, run });
  return { kind: "worked-out", run } as const;
}
