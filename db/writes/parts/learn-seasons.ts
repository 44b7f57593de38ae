import { type Day, toPlainDate } from "@/lib/calendar/day";
import { wearOfMonths } from "@/lib/forecast/fleet/type-seasons";
import { testSettings } from "@/lib/forecast/forecast-demand";
import type { TypeSeason } from "@/lib/forecast/stored-knowledge";
import type { Reader } from "../../database-types";
import { loadTypeMonths } from "../../queries/type-months";

/** The season of each kind of machine that has one, as of a month and as it was known when back-tests begin. */
export async function learnSeasons(db: Reader, forecastFrom: Day): Promise<readonly TypeSeason[]> {
  const months = await loadTypeMonths(db, forecastFrom);
  const { year, month } = toPlainDate(forecastFrom);
  const until = 12 * year + month - 1;
  return [...new Set(months.map(({ productType }) => productType))].flatMap((productType) => {
    const of = months.filter((each) => each.productType === productType);
    const now = wearOfMonths(of, until);
    const beforeTest = wearOfMonths(of, until - testSettings.origins);
    return now === undefined && beforeTest === undefined ? [] : [{ productType, now, beforeTest }];
  });
}
