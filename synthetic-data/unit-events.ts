import type { DayNumber } from "@/lib/calendar/day-number";
import { type AddedTrouble, addedTroubles, concerns } from "./added-troubles";
import { type CallRate, callRates, earlyDays } from "./call-rates";
import { drawWait, drawWeibull, happens } from "./draws";
import { lifeInUnit, livesOf } from "./hazards";
import type { Random } from "./random";
import { randomOf } from "./random";
import type { RegisterUnit } from "./register-unit";
import type { Scenario } from "./scenario";
import { dayAfterWear, seasonFactor, summerSwing, wornDays } from "./season";

/** Something that made a customer call, on the day it was reported. */
export type UnitEvent =
  | { readonly kind: "failure"; readonly on: DayNumber; readonly component: string; readonly planted: boolean }
  | { readonly kind: "call"; readonly on: DayNumber; readonly rate: CallRate };

/**
 * Every event in the unit's observed days, in order of days. Components begin with the unit at age 0; each failure
 * begins a new spell at age 0 on the same day. Failures before records began happened but are not told.
 */
export function unitEvents(scenario: Scenario, unit: RegisterUnit): readonly UnitEvent[] {
  const random = randomOf(scenario.seed, unit.index, 2);
  const events = [...failuresOf(random, unit), ...callsOf(random, unit), ...addedTo(scenario, unit)];
  return events.sort((a, b) => a.on - b.on);
}

function failuresOf(random: Random, unit: RegisterUnit): UnitEvent[] {
  const { productType } = unit.model;
  const wornAtEnd = wornDays(productType, unit.inServiceOn, unit.observedTo);
  return livesOf(unit.model).flatMap((life) => {
    const drawn = lifeInUnit(life, unit.madeInWeek);
    const events: UnitEvent[] = [];
    for (let worn = drawWeibull(random, drawn); worn < wornAtEnd; worn += drawWeibull(random, drawn)) {
      const on = dayAfterWear(productType, unit.inServiceOn, worn);
      const planted = drawn.scale !== life.scale;
      if (on >= unit.observedFrom) events.push({ kind: "failure", on, component: life.component, planted });
    }
    return events;
  });
}

/** Constant rates in two pieces, by drawing at the highest rate and keeping the due share. */
function callsOf(random: Random, unit: RegisterUnit): UnitEvent[] {
  const { productType } = unit.model;
  return callRates[productType].flatMap((rate) => {
    const highest =
      (rate.per100UnitYears / 36_525) *
      Math.max(1, rate.early) *
      (productType === "refrigerator" ? 1 + summerSwing : 1);
    const events: UnitEvent[] = [];
    for (
      let at = unit.observedFrom + drawWait(random, highest);
      at < unit.observedTo;
      at += drawWait(random, highest)
    ) {
      const on = Math.floor(at);
      if (happens(random, callsPerDay(rate, unit, on) / highest)) events.push({ kind: "call", on, rate });
    }
    return events;
  });
}

/** From a stream of their own, so that everything else is drawn as if they were not there. */
function addedTo(scenario: Scenario, unit: RegisterUnit): UnitEvent[] {
  return addedTroubles.flatMap((trouble, place) =>
    trouble.model === unit.model.key && concerns(trouble, unit.madeInWeek)
      ? eventsOf(randomOf(scenario.seed, unit.index, 7, place), trouble, unit)
      : [],
  );
}

/** Waits of mean 1 in the time in which the trouble's events come evenly. */
function eventsOf(random: Random, { what, shape, scaleDays, startsOn }: AddedTrouble, unit: RegisterUnit): UnitEvent[] {
  const events: UnitEvent[] = [];
  const from = Math.max(unit.observedFrom, startsOn ?? unit.observedFrom) - unit.inServiceOn;
  const until = unit.observedTo - unit.inServiceOn;
  for (let at = (from / scaleDays) ** shape + drawWait(random, 1); ; at += drawWait(random, 1)) {
    const age = scaleDays * at ** (1 / shape);
    if (age >= until) return events;
    const on = unit.inServiceOn + Math.floor(age);
    if (what.kind === "call") events.push({ kind: "call", on, rate: what.rate });
    else events.push({ kind: "failure", on, component: what.component, planted: true });
  }
}

/** Calls per day of one unit on that day. */
function callsPerDay(rate: CallRate, unit: Pick<RegisterUnit, "inServiceOn" | "model">, on: DayNumber): number {
  const early = on - unit.inServiceOn < earlyDays ? rate.early : 1;
  return (rate.per100UnitYears / 36_525) * early * seasonFactor(unit.model.productType, on);
}
