import { todayIn } from "@/app/_clock/today";
import type { Reader } from "@/db/database-types";
import { loadOutlookState } from "@/db/queries/part-list";
import {
  loadDemandTotals,
  loadOnTheWayCents,
  loadPartCredits,
  loadTiedUp,
  loadWarrantyWeeks,
} from "@/db/queries/part-money";
import { loadShop } from "@/db/queries/shop";
import { addDays } from "@/lib/calendar/day";

/** Days that payers are given to answer before a job's parts count in what they pay back. Own choice, no source. */
export const answeredAfterDays = 90;

/** A year of whole weeks. */
const weeksAnswered = 52;

export async function loadPartsMoney(db: Reader) {
  const shop = await loadShop(db);
  const today = todayIn(shop.timeZone);
  const until = addDays(today, -answeredAfterDays);
  return {
    currency: shop.currency,
    today,
    state: await loadOutlookState(db),
    totals: await loadDemandTotals(db),
    weeks: await loadWarrantyWeeks(db, addDays(until, -weeksAnswered * 7), until),
    shareFrom: addDays(until, -weeksAnswered * 7),
    shareUntil: addDays(until, -1),
    credits: await loadPartCredits(db, today),
    tiedUp: await loadTiedUp(db),
    onTheWayCents: await loadOnTheWayCents(db),
  };
}
export type PartsMoney = Awaited<ReturnType<typeof loadPartsMoney>>;
