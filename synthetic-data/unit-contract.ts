import { addDays, addMonths, type Day, earlierOf } from "@/lib/calendar/day";
import { dayText } from "./day-text";
import { drawWhole, happens, pickOne } from "./draws";
import type { Cells, ContractColumn } from "./file-columns";
import { makers } from "./models";
import { type Random, randomOf } from "./random";
import type { RegisterUnit } from "./register-unit";
import type { Scenario } from "./scenario";

/** The unit's service contract as one row of contracts.csv; undefined where its owner bought none. */
export function unitContract(scenario: Scenario, unit: RegisterUnit): Cells<ContractColumn> | undefined {
  if (!unit.hasContract) return undefined;
  const random = randomOf(scenario.seed, unit.index, 8);
  const paper = happens(random, 0.6) ? extendedPaper(random, scenario, unit) : homePaper(random, scenario, unit);
  return {
    ...paper,
    maker: makers[unit.model.maker].name,
    serial: unit.serial,
    holder: `K-${String(unit.index + 1).padStart(6, "0")}`,
  };
}

/** Bought with the machine; its paper follows the maker's first year. Some papers name the plan as it is printed. */
function extendedPaper(random: Random, scenario: Scenario, unit: RegisterUnit): Cells<ContractColumn> {
  const bought = dayText(unit.known.soldOn ?? unit.inServiceOn);
  const startsOn = addMonths(bought, 12);
  return {
    contract_number: numberOf("E", unit),
    plan: happens(random, 0.8) ? "larkfield_extended" : "Larkfield Extended Plan",
    sold_on: bought,
    ...runningTime(random, scenario, { startsOn, years: drawWhole(random, 3, 5) }),
    deductible: happens(random, 0.3) ? "25.00" : "",
  };
}

/** Bought for a household that is known already, so it waits and the holder pays a part; the paper has a limit of its own. */
function homePaper(random: Random, scenario: Scenario, unit: RegisterUnit): Cells<ContractColumn> {
  const earliest = Math.max(unit.inServiceOn, scenario.recordsFromNumber - 400);
  const bought = dayText(drawWhole(random, earliest, Math.max(earliest, unit.observedTo - 30)));
  const soldOn = earlierOf(bought, scenario.until);
  return {
    contract_number: numberOf("H", unit),
    plan: happens(random, 0.8) ? "larkfield_home" : "Larkfield Home Plan",
    sold_on: soldOn,
    ...runningTime(random, scenario, { startsOn: soldOn, years: drawWhole(random, 1, 3) }),
    wait_days: pickOne(random, [30, 30, 60]),
    deductible: pickOne(random, ["75.00", "100.00", "125.00"]),
    limit: pickOne(random, ["250.00", "600.00", "1500.00"]),
  };
}

interface PlannedTime {
  readonly startsOn: Day;
  readonly years: number;
}

/** Most papers that would have run out were renewed year by year under their number; a few were cancelled. */
function runningTime(
  random: Random,
  { until }: Scenario,
  { startsOn, years }: PlannedTime,
): Pick<Cells<ContractColumn>, "starts_on" | "ends_on" | "cancelled_on"> {
  const endOf = (count: number) => addDays(addMonths(startsOn, 12 * count), -1);
  const isRenewed = happens(random, 0.8);
  let count = years;
  while (isRenewed && endOf(count) < until) count += 1;
  const isCancelled = happens(random, 0.06);
  const cancelledOn = addDays(startsOn, drawWhole(random, 60, 360));
  const isKnown = isCancelled && cancelledOn <= until && cancelledOn <= endOf(count);
  return { starts_on: startsOn, ends_on: endOf(count), ...(isKnown ? { cancelled_on: cancelledOn } : {}) };
}

function numberOf(letter: string, unit: RegisterUnit): string {
  return `LK-${letter}${String(unit.index + 1).padStart(6, "0")}`;
}
