import { type CampaignOfSignal, loadCampaignsOfSignal } from "@/db/queries/signal-campaigns";
import { loadSignalJobs, type SignalJobs } from "@/db/queries/signal-jobs";
import type { StoredSignal } from "@/db/queries/signal-list";
import { type AreaAtRisk, loadAreasAtRisk } from "@/db/queries/signal-machines";
import { loadProductionUnits } from "@/db/queries/signal-production";
import type { Day } from "@/lib/calendar/day";
import { type ProductionUnits, type ProductionView, productionView } from "@/lib/signals/production-weeks";
import { keptAnswers } from "../../kept-answers";

/** All that the page of a signal shows but what people said of it, which is read each time. */
export interface RowsOfSignal {
  readonly jobs: SignalJobs;
  readonly areas: readonly AreaAtRisk[];
  readonly production: ProductionView;
  readonly made: Pick<ProductionUnits, "unknownUnits" | "monthOnlyUnits">;
  readonly campaigns: readonly CampaignOfSignal[];
}

const kept = keptAnswers<RowsOfSignal>();

export interface SignalInRows {
  readonly lead: Pick<StoredSignal["lead"], "key" | "ages" | "onsetWeek">;
  readonly onsetOn: Day;
  readonly asOf: Day;
}

/** What jobs and units on file say of a signal, read and reckoned once while the data stand. */
export async function whatRowsSay({ lead, onsetOn, asOf }: SignalInRows): Promise<RowsOfSignal> {
  const { key: cell, ages, onsetWeek } = lead;
  return await kept([cell, onsetOn, asOf, onsetWeek, ages], async (db) => {
    const made = await loadProductionUnits(db, cell, asOf);
    const jobs = await loadSignalJobs(db, { cell, from: onsetOn, asOf });
    const areas = await loadAreasAtRisk(db, cell, asOf);
    const campaigns = await loadCampaignsOfSignal(db, cell, asOf);
    return () => ({ made, production: productionView(made, ages, onsetWeek), jobs, areas, campaigns });
  });
}
