import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Currency } from "@/lib/domain/money";
import { normalised } from "@/lib/domain/normalised";
import type { Criticality } from "@/lib/domain/stock";
import { partFamilies } from "@/lib/forecast/part-families";
import type { BuyingTerms } from "@/lib/stock/buying-terms";
import type { Transaction } from "../../database-types";
import { loadPartTerms } from "../../queries/buying-terms";
import { loadPartCatalogue } from "../../queries/part-catalogue";
import { stockParts } from "../../schema/stock";
import type { Entered } from "./append-movements";
import { markAllParts, markFamily } from "./mark-parts";
import { onceInStock, type StockAnswer } from "./once-in-stock";
import { replanParts } from "./replan-parts";

export interface TermsRequest extends Entered {
  readonly partNumber: string;
  /** 0 where nothing was said before. */
  readonly seenVersion: number;
  readonly terms: BuyingTerms & {
    readonly criticality: Criticality;
    readonly supplier: string;
    readonly unitCostCents: number | undefined;
    readonly supersededBy: string | undefined;
    readonly lastBuyOn: Day | undefined;
  };
  readonly today: Day;
}

/** Says how a part is bought. What follows for ordering it is worked out in the same transaction. */
export async function keepPartTerms(request: TermsRequest): Promise<StockAnswer> {
  const { partNumber, seenVersion, terms } = request;
  return await onceInStock("terms", request, [partNumber, seenVersion, terms], (tx) => keep(tx, request));
}

async function keep(
  tx: Transaction,
  { partNumber, seenVersion, terms, today, by, at }: TermsRequest,
): Promise<StockAnswer> {
  const partKey = normalised(partNumber);
  if (partKey === "") return { kind: "refused", sentence: "A part number needs a letter or a digit." };
  await tx.rows(sql`select pg_advisory_xact_lock(7016082, hashtext(${partKey}))::text`);
  const before = (await loadPartTerms(tx, [partKey])).get(partKey);
  if ((before?.version ?? 0) !== seenVersion)
    return {
      kind: "refused",
      sentence: `${before?.setBy ?? "Somebody"} changed this meanwhile. Look at what is there now, then enter yours again.`,
    };
  const circle = await circleSentence(tx, partNumber, terms.supersededBy, today);
  if (circle !== undefined) return { kind: "refused", field: "supersededBy", sentence: circle };
  const [shop] = await tx.rows<{ currency: Currency }>(sql`select currency from shop`);
  if (shop === undefined) return { kind: "refused", sentence: "There is no company yet: load its settings first." };
  const row = {
    ...terms,
    partNumber,
    unitCostCents: terms.unitCostCents ?? null,
    supersededBy: terms.supersededBy ?? null,
    lastBuyOn: terms.lastBuyOn ?? null,
    currency: shop.currency,
    setBy: by,
    setAt: at,
    version: seenVersion + 1,
  };
  await tx
    .insert(stockParts)
    .values({ partKey, ...row })
    .onConflictDoUpdate({ target: stockParts.partKey, set: row });
  await replanParts(tx, [partKey], today);
  const moved = normalised(before?.supersededBy ?? "") !== normalised(terms.supersededBy ?? "");
  if (moved) await markAllParts(tx);
  else if (before?.unitCostCents !== terms.unitCostCents) await markFamily(tx, partKey);
  return { kind: "done", sentence: "Kept. Reorder point and order quantity follow it." };
}

/** A circle that this link would close, in words. */
async function circleSentence(
  tx: Transaction,
  partNumber: string,
  supersededBy: string | undefined,
  today: Day,
): Promise<string | undefined> {
  if (supersededBy === undefined) return undefined;
  const [from, to] = [normalised(partNumber), normalised(supersededBy)];
  if (from === to) return `${partNumber} cannot supersede itself. Name the newer number, or leave it blank.`;
  const catalogue = await loadPartCatalogue(tx, today, []);
  const others = catalogue.links.filter((link) => link.from !== from);
  const typed: Readonly<Record<string, string>> = { [from]: partNumber, [to]: supersededBy };
  const name = (key: string) => (catalogue.nameOf(key) === key ? (typed[key] ?? key) : catalogue.nameOf(key));
  const { problems } = partFamilies([...others, { from, to }], name);
  const own = problems.find(({ parts }) => parts.includes(from) && parts.includes(to));
  return own && `${own.sentence} Nothing was kept: name another number, or leave it blank.`;
}
