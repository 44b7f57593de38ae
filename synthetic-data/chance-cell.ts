import type { DayNumber } from "@/lib/calendar/day-number";
import { dayText, numberOfDay } from "./day-text";
import { lifeInUnit, livesOf } from "./hazards";
import { modelNumber, modelOf } from "./models";
import type { RegisterUnit } from "./register-unit";
import { weibullRenewals } from "./renewal";
import { wornDays } from "./season";
import type { ChanceCell } from "./truth";
import type { JobPlan } from "./unit-jobs";

/** Least expected failures of a cell that may be named: below this, one or two more are no story. */
const leastExpected = 3;

/** Finds the component × model × half-year of production that looks worst although nothing was planted in it. */
export interface ChanceSearch {
  readonly add: (unit: RegisterUnit, jobs: readonly JobPlan[]) => void;
  readonly found: () => ChanceCell | undefined;
}

export function chanceSearch(): ChanceSearch {
  const cells = new Map<string, { observed: number; expected: number }>();
  const cellOf = (unit: RegisterUnit, component: string) => {
    const key = `${unit.model.key}|${component}|${halfYear(unit.madeInWeek)}`;
    const known = cells.get(key);
    if (known !== undefined) return known;
    const cell = { observed: 0, expected: 0 };
    cells.set(key, cell);
    return cell;
  };
  return {
    add: (unit, jobs) => {
      for (const life of livesOf(unit.model)) {
        if (lifeInUnit(life, unit.madeInWeek) !== life) continue;
        const upTo = (on: DayNumber) =>
          renewals(life.shape, wornDays(unit.model.productType, unit.inServiceOn, on) / life.scale);
        cellOf(unit, life.component).expected += upTo(unit.observedTo) - upTo(unit.observedFrom);
      }
      for (const { status, returnsTo, event } of jobs) {
        if (status !== "closed" || returnsTo !== undefined || event.kind !== "failure" || event.planted) continue;
        cellOf(unit, event.component).observed += 1;
      }
    },
    found: () => worstOf(cells),
  };
}

function worstOf(
  cells: ReadonlyMap<string, { readonly observed: number; readonly expected: number }>,
): ChanceCell | undefined {
  let worst: ChanceCell | undefined;
  let most = 0;
  for (const [key, { observed, expected }] of cells) {
    const surprise = (observed - expected) / Math.sqrt(expected);
    if (expected < leastExpected || surprise <= most) continue;
    const [model = "", component = "", half = ""] = key.split("|");
    const [year = "", part] = half.split("-");
    most = surprise;
    worst = {
      model: modelNumber(modelOf(model)),
      component,
      madeFrom: dayText(numberOfDay(part === "1" ? `${year}-01-01` : `${year}-07-01`)),
      madeTo: dayText(numberOfDay(part === "1" ? `${year}-06-30` : `${year}-12-31`)),
      observed,
      expected,
    };
  }
  return worst;
}

/** Half-year of the week's Monday, such as 2024-1. */
function halfYear(madeInWeek: number): string {
  const known = halves.get(madeInWeek);
  if (known !== undefined) return known;
  const monday = dayText(7 * madeInWeek + 4);
  const half = `${monday.slice(0, 4)}-${Number(monday.slice(5, 7)) <= 6 ? 1 : 2}`;
  halves.set(madeInWeek, half);
  return half;
}

const halves = new Map<number, string>();

/** Up to eight scales: the oldest unit in the shortest unplanted life. */
function renewals(shape: number, age: number): number {
  const known = tables.get(shape);
  if (known !== undefined) return known(age);
  const table = weibullRenewals(shape, 8);
  tables.set(shape, table);
  return table(age);
}

const tables = new Map<number, (age: number) => number>();
