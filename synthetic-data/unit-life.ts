import type { DayNumber } from "@/lib/calendar/day-number";
import { dayText } from "./day-text";
import { drawWait, drawWeibull, drawWhole, happens, pickWeighted } from "./draws";
import { type Model, models } from "./models";
import type { Random } from "./random";
import type { Scenario } from "./scenario";

/** What a unit is and how long the company looks after it, before any paper about it is lost. */
export interface UnitLife {
  readonly model: Model;
  readonly installedOn: DayNumber;
  /** Day on which it was scrapped or its owner left, whichever came first; may lie after the records end. */
  readonly retiredOn: DayNumber | undefined;
}

/** Share of units already in service when records begin. */
const olderShare = 0.45;

/** Owners who go elsewhere or move away, per year after the first year in our care. It is drawn apart from failures. */
export const leavingPerYear = 0.04;

/** Characteristic life in years until an appliance is scrapped, shape 3 (energy-rule analyses give Weibull lives, from memory). */
const scrapYears: Readonly<Record<Model["productType"], number>> = {
  front_load_washer: 14,
  top_load_washer: 14.5,
  electric_dryer: 15.5,
  gas_dryer: 15.5,
  dishwasher: 14,
  refrigerator: 16,
  range_oven: 18,
};

/** Only units that are still in service when they would first be observed are in the register. */
export function drawLife(random: Random, scenario: Scenario): UnitLife {
  for (;;) {
    const installedOn = drawInstallation(random, scenario);
    const model = drawModel(random, installedOn);
    const scrappedOn =
      installedOn + Math.floor(drawWeibull(random, { shape: 3, scale: scrapYears[model.productType] * 365.25 }));
    const inOurCare = Math.max(installedOn, scenario.recordsFromNumber);
    const leavesOn = inOurCare + 365 + Math.floor(365.25 * drawWait(random, leavingPerYear));
    const retiredOn = Math.min(scrappedOn, leavesOn);
    if (retiredOn > inOurCare + 30) return { model, installedOn, retiredOn };
  }
}

function drawInstallation(random: Random, scenario: Scenario): DayNumber {
  if (!happens(random, olderShare)) return drawWhole(random, scenario.recordsFromNumber, scenario.untilNumber - 1);
  const years = 12 * (1 - Math.sqrt(1 - random.share())); // fewer and fewer towards twelve years
  return scenario.recordsFromNumber - 1 - Math.floor(years * 365.25);
}

function drawModel(random: Random, installedOn: DayNumber): Model {
  const year = Number(dayText(installedOn).slice(0, 4));
  const onSale = models.map((model) => (year >= model.from && year < model.until ? model.share : 0));
  const model = models[pickWeighted(random, onSale)];
  if (model === undefined) throw new RangeError(`installedOn: no model on sale in ${year}`);
  return model;
}
