import type { monitorEventLoopDelay } from "node:perf_hooks";
import process from "node:process";
import { readOnly } from "@/db/client";
import { loadLastRuns, type ProgramRun } from "@/db/queries/program-runs";
import { loadRestoreDrills, type RestoreDrills } from "@/db/queries/restore-drills";
import { loadServerFacts, type ServerFacts } from "@/db/queries/server-facts";
import { loadShop } from "@/db/queries/shop";
import { loadTooManyRights } from "@/db/queries/too-many-rights";
import type { SignalsView } from "./four-signals";
import { type FreeDisks, freeDisks } from "./free-disks";
import { loadReadiness, type Readiness } from "./load-readiness";
import { watched } from "./watch-requests";

export interface Health {
  readonly readiness: Readiness;
  readonly disks: FreeDisks;
  /** What the program itself takes of the computer. */
  readonly process: { readonly residentBytes: number; readonly slowestTurnMs: number };
  readonly signals: SignalsView | undefined;
  /** Undefined where the database does not answer. */
  readonly stored:
    | {
        readonly server: ServerFacts;
        /** What the site's login to the database may do and should not, as ends of sentences about it. */
        readonly tooManyRights: readonly string[];
        readonly drills: RestoreDrills;
        readonly runs: readonly ProgramRun[];
        readonly timeZone: string;
      }
    | undefined;
}

/** All that the Health page shows. A database that does not answer is itself an answer, so nothing is thrown for it. */
export async function loadHealth(): Promise<Health> {
  const running = watched();
  const [readiness, disks, stored] = await Promise.all([loadReadiness(), freeDisks(), loadStored()]);
  return {
    readiness,
    disks,
    process: { residentBytes: process.memoryUsage.rss(), slowestTurnMs: slowestTurn(running?.delay) },
    signals: running?.signals.view(performance.now()),
    stored,
  };
}

async function loadStored(): Promise<Health["stored"]> {
  try {
    return await readOnly(async (db) => ({
      server: await loadServerFacts(db),
      tooManyRights: await loadTooManyRights(db),
      drills: await loadRestoreDrills(db),
      runs: await loadLastRuns(db),
      timeZone: (await loadShop(db)).timeZone,
    }));
  } catch {
    return undefined;
  }
}

/** 99 in 100 turns of the program's one thread waited no longer than this. */
function slowestTurn(delay: ReturnType<typeof monitorEventLoopDelay> | undefined): number {
  return delay === undefined ? 0 : delay.percentile(99) / 1e6;
}
