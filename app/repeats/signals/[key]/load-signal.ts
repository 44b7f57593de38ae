import { readOnly } from "@/db/client";
import { type CampaignOfSignal, loadCampaignsOfSignal } from "@/db/queries/signal-campaigns";
import { loadSignalJobs, type SignalJobs } from "@/db/queries/signal-jobs";
import type { StoredRun, StoredSignal } from "@/db/queries/signal-list";
import { type AreaAtRisk, loadAreasAtRisk } from "@/db/queries/signal-machines";
import { loadProductionUnits } from "@/db/queries/signal-production";
import { loadNotesOfSignal, type TechnicianNote } from "@/db/queries/technician-notes";
import type { Day } from "@/lib/calendar/day";
import { type ProductionUnits, type ProductionView, productionView } from "@/lib/signals/production-weeks";
import { keptAnswers } from "../../kept-answers";
import { currentRun } from "../current-run";

/** What the rows say of a signal: all but what people said of it, which is read each time. */
const kept = keptAnswers<Omit<SignalView, "run" | "signal" | "past" | "notes">>();

export interface SignalView {
  readonly run: StoredRun;
  readonly signal: StoredSignal;
  readonly past: boolean;
  readonly jobs: SignalJobs;
  readonly areas: readonly AreaAtRisk[];
  readonly production: ProductionView;
  readonly made: Pick<ProductionUnits, "unknownUnits" | "monthOnlyUnits">;
  readonly campaigns: readonly CampaignOfSignal[];
  readonly notes: readonly TechnicianNote[];
}

/** Everything that the page of a signal shows. @returns undefined where no list has it as of that day */
export async function loadSignal(key: string, asked: Day | undefined): Promise<SignalView | undefined> {
  const current = await currentRun(asked, key);
  const signal = current.kind === "run" ? current.signals.find((one) => one.key === key) : undefined;
  if (current.kind !== "run" || signal === undefined) return undefined;
  const cell = signal.lead.key;
  const { asOf } = current.run;
  const { lead, onsetOn } = signal;
  const read = await kept([cell, onsetOn, asOf, lead.onsetWeek, lead.ages], async (db) => {
    const made = await loadProductionUnits(db, cell, asOf);
    const jobs = await loadSignalJobs(db, { cell, from: onsetOn, asOf });
    const areas = await loadAreasAtRisk(db, cell, asOf);
    const campaigns = await loadCampaignsOfSignal(db, cell, asOf);
    return () => ({ made, production: productionView(made, lead.ages, lead.onsetWeek), jobs, areas, campaigns });
  });
  const notes = await readOnly((db) => loadNotesOfSignal(db, key));
  return { run: current.run, signal, past: current.past, notes, ...read };
}
