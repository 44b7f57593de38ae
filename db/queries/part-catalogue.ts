import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Currency } from "@/lib/domain/money";
import { normalised } from "@/lib/domain/normalised";
import type { Supersession } from "@/lib/forecast/supersession";
import type { Reader } from "../database-types";

/** What price lists and people say of parts today, by number in upper case, letters and digits only. */
export interface PartCatalogue {
  readonly entries: ReadonlyMap<string, CatalogueEntry>;
  readonly links: readonly Supersession[];
  /** A number as people write it. */
  readonly nameOf: (partKey: string) => string;
}

export interface CatalogueEntry {
  readonly partNumber: string;
  readonly description: string;
  readonly component: string | undefined;
  readonly costCents: number | undefined;
  readonly currency: Currency;
}

/**
 * All that is said of what took the place of what, and the entries in force of some parts.
 * @param only their numbers in upper case, letters and digits only; all where absent
 */
export async function loadPartCatalogue(db: Reader, today: Day, only?: readonly string[]): Promise<PartCatalogue> {
  const which = only === undefined ? sql`true` : sql`(normalised = any(${sql.param([...only])}::text[]))`;
  const rows = await db.rows<CatalogueRow>(sql`
    select distinct on (part_id) part_number, normalised, description, component, replaces, superseded_by,
      cost_cents::float8 as cost_cents, currency
    from parts where effective_on <= ${today}::date and (${which} or replaces is not null or superseded_by is not null)
    order by part_id, effective_on desc`);
  const said = await db.rows<{ part_number: string; superseded_by: string }>(sql`
    select part_number, superseded_by from stock_parts where superseded_by is not null`);
  const names = new Map<string, string>();
  const links = new Map<string, Supersession>();
  const link = (older: string, newer: string) => {
    for (const name of [older, newer]) if (!names.has(normalised(name))) names.set(normalised(name), name);
    const [from, to] = [normalised(older), normalised(newer)];
    if (from !== "" && to !== "") links.set(`${from} ${to}`, { from, to });
  };
  for (const row of rows) names.set(row.normalised, row.part_number);
  for (const { part_number, replaces, superseded_by } of rows) {
    if (replaces !== null) link(replaces, part_number);
    if (superseded_by !== null) link(part_number, superseded_by);
  }
  for (const { part_number, superseded_by } of said) link(part_number, superseded_by);
  return {
    entries: new Map(rows.map((row) => [row.normalised, entryOf(row)])),
    links: [...links.values()],
    nameOf: (partKey) => names.get(partKey) ?? partKey,
  };
}

type CatalogueRow = {
  part_number: string;
  normalised: string;
  description: string;
  component: string | null;
  replaces: string | null;
  superseded_by: string | null;
  cost_cents: number | null;
  currency: Currency;
};

function entryOf(row: CatalogueRow): CatalogueEntry {
  return {
    partNumber: row.part_number,
    description: row.description,
    component: row.component ?? undefined,
    costCents: row.cost_cents ?? undefined,
    currency: row.currency,
  };
}
