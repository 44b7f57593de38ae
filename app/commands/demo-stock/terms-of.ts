import type { ListedPart } from "@/db/queries/part-list";
import type { TermsRequest } from "@/db/writes/parts/keep-part-terms";
import { addDays, type Day } from "@/lib/calendar/day";
import { usualRisk } from "@/lib/stock/buying-terms";
import { distributors } from "@/synthetic-data/company";

/** How a part of the invented company is bought: by what it costs and to what it belongs. Invented. */
export function termsOf(part: ListedPart, until: Day): TermsRequest["terms"] {
  const cents = part.unitCostCents ?? 0;
  const criticality = cents < 4_000 ? "usual" : cents > 20_000 ? "can wait" : "vital";
  const letters = [...part.partKey].reduce((sum, letter) => sum + (letter.codePointAt(0) ?? 0), 0);
  const isEnding = part.component === "tub_bearing";
  return {
    leadDays: letters % 3 === 0 ? [4 + (letters % 9)] : [],
    reviewDays: 7,
    pack: cents < 1_000 ? 10 : cents < 2_500 ? 4 : 1,
    orderCostCents: 900,
    holdingPercent: 20,
    criticality,
    shortOneIn: usualRisk[criticality],
    supplier: distributors[letters % distributors.length] ?? "",
    unitCostCents: undefined,
    supersededBy: undefined,
    lastBuyOn: isEnding ? addDays(until, 45) : undefined,
  };
}
