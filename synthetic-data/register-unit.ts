import { addMonths } from "@/lib/calendar/day";
import type { DayNumber } from "@/lib/calendar/day-number";
import { dayNumber } from "@/lib/calendar/day-number";
import type { UnitUse } from "@/lib/domain/unit";
import { company } from "./company";
import { dayText } from "./day-text";
import { drawWhole, happens } from "./draws";
import type { Model } from "./models";
import { makers } from "./models";
import { weekDigits, weekNumber } from "./production-week";
import type { Random } from "./random";
import { randomOf } from "./random";
import type { Scenario } from "./scenario";
import { drawLife, type UnitLife } from "./unit-life";

/** One appliance as the register names it, with the days that the register knows. */
export interface RegisterUnit {
  readonly index: number;
  readonly model: Model;
  readonly serial: string;
  readonly madeInWeek: number;
  readonly known: KnownDays;
  /**
   * Day from which ages count: the best that the register knows (installed, delivered, sold, made plus the grace).
   * Where it knows none, the hidden day of installation; such a unit carries no exposure.
   */
  readonly inServiceOn: DayNumber;
  readonly placed: boolean;
  readonly observedFrom: DayNumber;
  /** First day no longer observed: the day of retirement, or the day after the records end. */
  readonly observedTo: DayNumber;
  readonly retiredOn: DayNumber | undefined;
  readonly recordedFrom: DayNumber | undefined;
  readonly use: UnitUse;
  readonly ownerNumber: number;
  readonly hasContract: boolean;
}

export interface KnownDays {
  readonly madeOn: DayNumber | undefined;
  readonly madeMonthOnly: boolean;
  readonly shippedOn: DayNumber | undefined;
  readonly soldOn: DayNumber | undefined;
  readonly deliveredOn: DayNumber | undefined;
  readonly installedOn: DayNumber | undefined;
  readonly occupiedOn: DayNumber | undefined;
  readonly registeredOn: DayNumber | undefined;
}

/** The unit of that number; the same whatever the size of the demo. */
export function registerUnit(scenario: Scenario, index: number): RegisterUnit {
  const random = randomOf(scenario.seed, index, 1);
  const life = drawLife(random, scenario);
  const days = drawDays(random, life, scenario.untilNumber);
  const placing = placeInService(life, days);
  const recordedFrom = drawRecordedFrom(random, scenario, life);
  const observedFrom = Math.max(placing.inServiceOn, scenario.recordsFromNumber, recordedFrom ?? 0);
  const retiredOn = life.retiredOn === undefined ? undefined : Math.max(life.retiredOn, observedFrom + 1);
  const gone = retiredOn !== undefined && retiredOn <= scenario.untilNumber;
  return {
    index,
    model: life.model,
    serial: `${makers[life.model.maker].plant}${weekDigits(days.madeOn)}${String(index + 1).padStart(7, "0")}`,
    madeInWeek: weekNumber(days.madeOn),
    known: days.known,
    ...placing,
    observedFrom,
    observedTo: gone ? retiredOn : scenario.untilNumber + 1,
    retiredOn: gone ? retiredOn : undefined,
    recordedFrom,
    use: happens(random, 0.03) ? "commercial" : "household",
    ownerNumber: happens(random, 0.06) ? 2 : 1,
    hasContract: happens(random, 0.25),
  };
}

interface DrawnDays {
  readonly madeOn: DayNumber;
  readonly known: KnownDays;
}

/** Made, shipped, sold, delivered, installed in this order; then some of them are forgotten. */
function drawDays(random: Random, life: UnitLife, lastDay: DayNumber): DrawnDays {
  const installedOn = life.installedOn;
  const deliveredOn = installedOn - (happens(random, 0.75) ? 0 : drawWhole(random, 1, 6));
  const soldOn = deliveredOn - drawWhole(random, 1, 20);
  const shippedOn = soldOn - drawWhole(random, 10, 90);
  const madeOn = shippedOn - drawWhole(random, 4, 25);
  const kind = random.share();
  const [nothing, onlyMade] = [kind < 0.015, kind >= 0.015 && kind < 0.05];
  const keep = (on: DayNumber, chance: number) => (happens(random, chance) && kind >= 0.05 ? on : undefined);
  const sold = keep(soldOn, 0.7);
  const installed = keep(installedOn, 0.5);
  const delivered =
    keep(deliveredOn, 0.8) ?? (kind >= 0.05 && sold === undefined && installed === undefined ? deliveredOn : undefined);
  const known: KnownDays = {
    madeOn: !nothing && (onlyMade || happens(random, 0.9)) ? madeOn : undefined,
    madeMonthOnly: !onlyMade && happens(random, 0.5),
    shippedOn: keep(shippedOn, 0.2),
    soldOn: sold,
    deliveredOn: delivered,
    installedOn: installed,
    occupiedOn: keep(installedOn, 0.03),
    registeredOn: keep(Math.min(lastDay, installedOn + drawWhole(random, 0, 40)), 0.3),
  };
  return { madeOn, known };
}

function placeInService(life: UnitLife, { known }: DrawnDays): Pick<RegisterUnit, "inServiceOn" | "placed"> {
  const dated = known.installedOn ?? known.deliveredOn ?? known.soldOn;
  if (dated !== undefined) return { inServiceOn: dated, placed: true };
  if (known.madeOn === undefined) return { inServiceOn: life.installedOn, placed: false };
  return { inServiceOn: dayNumber(addMonths(dayText(known.madeOn), company.madeGraceMonths)), placed: true };
}

/** Some units came with an owner's file that begins later than the company's own records. */
function drawRecordedFrom(random: Random, scenario: Scenario, life: UnitLife): DayNumber | undefined {
  if (!happens(random, 0.04)) return undefined;
  const first = Math.max(life.installedOn, scenario.recordsFromNumber);
  const last = Math.min(life.retiredOn ?? scenario.untilNumber, scenario.untilNumber) - 1;
  return last > first + 60 ? drawWhole(random, first + 1, last - 30) : undefined;
}
