import { todayIn } from "@/app/_clock/today";
import type { Reader } from "@/db/database-types";
import { loadExposureCells } from "@/db/queries/exposure-cells";
import { loadCatalogueWords } from "@/db/queries/known-words";
import { loadMostFailingPart, type PartOfModel } from "@/db/queries/most-failing-part";
import { loadDelayRecord } from "@/db/queries/reporting-delay";
import { loadShop, type Shop } from "@/db/queries/shop";
import { loadWhatIsCounted, type WhatIsCounted } from "@/db/queries/what-is-counted";
import { dayNumber } from "@/lib/calendar/day-number";
import { type AgeHazard, ageHazards } from "@/lib/failures/age-hazards";
import { componentFlows } from "@/lib/failures/component-flows";
import { type ComponentLife, componentLife } from "@/lib/failures/component-life";
import { failureRates, type GroupRate } from "@/lib/failures/failure-rates";
import type { RateQuestion } from "@/lib/failures/rate-question";
import { type ReportingDelays, reportingDelays } from "@/lib/failures/reporting-delay";

/** The live figures of How we count. */
export interface CountedView {
  readonly shop: Shop;
  readonly counted: WhatIsCounted;
  readonly example: LiveExample | undefined;
  readonly delays: ReportingDelays | undefined;
}

/** The component of a model that failed most often, worked through by every method. */
export interface LiveExample extends PartOfModel {
  readonly level: number;
  readonly rate: GroupRate;
  readonly life: ComponentLife;
  readonly hazards: readonly AgeHazard[];
}

export async function loadCountedView(db: Reader): Promise<CountedView> {
  const shop = await loadShop(db);
  const { timeZone } = shop;
  const record = await loadDelayRecord(db, { today: todayIn(timeZone), timeZone });
  return {
    shop,
    counted: await loadWhatIsCounted(db),
    example: await loadExample(db, timeZone),
    delays: reportingDelays(record),
  };
}

const level = 0.95;

/** Reads the counts of one model only, however many there are. */
async function loadExample(db: Reader, timeZone: string): Promise<LiveExample | undefined> {
  const part = await loadMostFailingPart(db);
  const { cutOff } = await loadCatalogueWords(db, todayIn(timeZone));
  if (part === undefined || cutOff === undefined) return undefined;
  const { maker, model, component } = part;
  const cells = await loadExposureCells(db, { maker, model });
  const where = { maker, model, component };
  const question: RateQuestion = {
    by: ["component"],
    counting: "failures",
    from: undefined,
    until: dayNumber(cutOff),
    where,
    level,
  };
  const { fleet } = failureRates(cells, question);
  const lives = { ...question, component };
  const hazards = ageHazards(componentFlows(cells, lives), level);
  return { ...part, level, rate: fleet, life: componentLife(cells, lives), hazards };
}
