import { createHash } from "node:crypto";
import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Currency } from "@/lib/domain/money";
import { normalised } from "@/lib/domain/normalised";
import type { DemandKnowledge } from "@/lib/forecast/forecast-demand";
import { type PartFamilies, partFamilies } from "@/lib/forecast/part-families";
import { knowledgeOf, type StoredKnowledge, type TypeSeason } from "@/lib/forecast/stored-knowledge";
import type { Reader } from "../../database-types";
import { loadPartCatalogue } from "../../queries/part-catalogue";
import { type HistorySpan, loadFirstMonth, loadUsedNumbers } from "../../queries/part-histories";

/** What all parts have in common when they are looked at. */
export interface OutlookSetting {
  readonly span: HistorySpan;
  readonly currency: Currency;
  readonly families: PartFamilies;
  readonly nameOf: (partKey: string) => string;
  /** Numbers as jobs spell them, by the current number under which they are counted; none for a part only on the shelf. */
  readonly spellings: ReadonlyMap<string, readonly string[]>;
}

/** @returns undefined where nothing was ever used and nothing is kept, or there is no company yet */
export async function loadOutlookSetting(db: Reader, forecastFrom: Day): Promise<OutlookSetting | undefined> {
  const [shop] = await db.rows<{ currency: Currency }>(sql`select currency from shop`);
  if (shop === undefined) return undefined;
  const catalogue = await loadPartCatalogue(db, forecastFrom, []);
  const families = partFamilies(catalogue.links, catalogue.nameOf);
  const spellings = new Map<string, string[]>();
  const names = new Map<string, string>();
  for (const number of await loadUsedNumbers(db)) {
    const key = normalised(number);
    if (key === "") continue;
    names.set(key, number);
    const current = families.currentOf(key);
    spellings.set(current, [...(spellings.get(current) ?? []), number]);
  }
  const kept = await db.rows<{ part_key: string; part_number: string }>(sql`
    select part_key, part_number from stock_parts union select part_key, min(part_number) from stock_movements group by part_key`);
  for (const { part_key, part_number } of kept) {
    const current = families.currentOf(part_key);
    if (!spellings.has(current)) spellings.set(current, []);
    if (!names.has(part_key)) names.set(part_key, part_number);
  }
  if (spellings.size === 0) return undefined;
  const from = (await loadFirstMonth(db, forecastFrom)) ?? forecastFrom;
  return {
    span: { from, until: forecastFrom },
    currency: shop.currency,
    families,
    nameOf: (key) => names.get(key) ?? catalogue.nameOf(key),
    spellings,
  };
}

export interface KeptKnowledge {
  readonly forecastFrom: Day;
  readonly knowledge: DemandKnowledge;
  readonly seasons: readonly TypeSeason[];
  readonly hash: string;
}

export async function loadKnowledge(db: Reader): Promise<KeptKnowledge | undefined> {
  const [row] = await db.rows<{ from: Day; knowledge: StoredKnowledge; hash: string }>(sql`
    select forecast_from::text as from, knowledge, md5(knowledge::text) as hash from demand_knowledge`);
  return (
    row && {
      forecastFrom: row.from,
      knowledge: knowledgeOf(row.knowledge),
      seasons: row.knowledge.seasons ?? [],
      hash: row.hash,
    }
  );
}

/** Equal versions are equal outlooks; another way of forecasting begins another row of versions. */
export function dataVersion(from: readonly unknown[]): string {
  return createHash("sha256")
    .update(JSON.stringify(["outlook 4", ...from]))
    .digest("hex");
}
