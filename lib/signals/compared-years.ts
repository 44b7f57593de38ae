import type { AgeCounts } from "./cell-weeks";
import { weeksOfBand, weeksPerYear } from "./weeks";

/** One year of age: own failures and unit-years, and those of others of the kind. */
export interface ComparedYear {
  readonly name: string;
  readonly own: number;
  readonly ownYears: number;
  readonly others: number;
  readonly othersYears: number;
}

/** Years of age at which both were watched; parts of the first year are taken together. */
export function comparedYears(ages: readonly AgeCounts[]): ComparedYear[] {
  const years = new Map<number, ComparedYear>();
  for (const { band, own, ownUnitWeeks, others, othersUnitWeeks } of ages) {
    const year = Math.floor(weeksOfBand(band).from / weeksPerYear);
    const known = years.get(year) ?? { name: nameOf(year), own: 0, ownYears: 0, others: 0, othersYears: 0 };
    years.set(year, {
      name: known.name,
      own: known.own + own,
      ownYears: known.ownYears + ownUnitWeeks / weeksPerYear,
      others: known.others + others,
      othersYears: known.othersYears + othersUnitWeeks / weeksPerYear,
    });
  }
  return [...years.values()].filter(({ ownYears, othersYears }) => ownYears > 0 && othersYears > 0);
}

function nameOf(year: number): string {
  return year >= 16 ? "17th year and later" : `${year + 1}${ordinal(year + 1)} year`;
}

function ordinal(number: number): string {
  if (number >= 11 && number <= 13) return "th";
  return ["th", "st", "nd", "rd"][number % 10] ?? "th";
}
