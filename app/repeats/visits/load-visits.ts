import type { AddressValues } from "@/app/_address/address-reader";
import { loadCatalogueWords } from "@/db/queries/known-words";
import { loadVisitShares, type VisitQuestion } from "@/db/queries/visit-shares";
import { addDays } from "@/lib/calendar/day";
import { keptAnswers } from "../kept-answers";
import { readVisitsAddress } from "./read-visits-address";
import { type VisitRow, visitRows } from "./visit-rows";

export interface VisitsView {
  readonly question: VisitQuestion;
  readonly notices: readonly string[];
  readonly rows: readonly VisitRow[];
  readonly all: VisitRow;
}

const kept = keptAnswers<VisitsView | undefined>();

/** From an address to its answer. @returns undefined where nothing is on file */
export async function loadVisits(values: AddressValues): Promise<VisitsView | undefined> {
  return await kept(values, async (db, today) => {
    const { cutOff } = await loadCatalogueWords(db, today);
    if (cutOff === undefined) return () => undefined;
    const { question, notices } = readVisitsAddress(values, cutOff);
    const shares = await loadVisitShares(db, question);
    return () => ({ question, notices, ...visitRows(shares, question.by) });
  });
}

export function visitsAddress({ by, from, until }: VisitQuestion): string {
  const search = new URLSearchParams({ by: by[0] ?? "type" });
  if (by[1] !== undefined) search.set("and", by[1]);
  if (from !== undefined) search.set("from", from);
  search.set("to", addDays(until, -1));
  return search.toString();
}
