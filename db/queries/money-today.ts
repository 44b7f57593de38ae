import { sql } from "drizzle-orm";
import type { Day } from "@/lib/calendar/day";
import type { Leak } from "@/lib/claims/leaks/leak";
import type { Currency } from "@/lib/domain/money";
import type { Reader } from "../database-types";
import { listedDays } from "./held-parts";

/** Money that somebody has to see to, for the first page. */
export interface MoneyDue {
  /** Money that payers kept and nobody pursues, with the first day on which that can no longer be put right. */
  readonly kept: readonly KeptMoney[];
  /** Lines of payers' lists that wait: for their columns, a yes, a claim or the posting. */
  readonly waitingLines: number;
  /** Failed parts whose last day of keeping passed within the last weeks. */
  readonly partsToGo: number;
}

export interface KeptMoney {
  readonly leak: Extract<Leak, "short-paid" | "part credit">;
  readonly claims: number;
  readonly sums: readonly { readonly currency: Currency; readonly cents: number }[];
  /** First day to dispute that has not passed; undefined where all of them have. */
  readonly firstDay: Day | undefined;
}

export async function loadMoneyDue(db: Reader, today: Day): Promise<MoneyDue> {
  const rows = await db.rows<{
    leak: KeptMoney["leak"];
    currency: Currency;
    claims: number;
    cents: string;
    first: Day | null;
  }>(sql`
    select leak, currency, count(distinct claim_number)::int as claims, sum(amount_cents)::text as cents,
      (min(due_on) filter (where due_on >= ${today}))::text as first
    from unclaimed_work where leak in ('short-paid', 'part credit') group by 1, 2 order by 1, 2`);
  const [others] = await db.rows<{ lines: number; parts: number }>(sql`
    select (select count(*)::int from remittance_lines l join remittances r using (remittance_id)
        where r.undone_at is null and l.fate in ('ready', 'asked', 'tray', 'unreadable')) as lines,
      (select count(*)::int from claims c where c.keep_part_until between ${today}::date - ${listedDays}::integer and ${today}::date - 1
        and c.state not in ('in audit', 'withdrawn') and exists (select from claim_lines l where l.unit_id = c.unit_id and l.claim_id = c.claim_id and l.pay_item = 'parts'
          and coalesce((select f.fate from part_fates f where f.unit_id = l.unit_id and f.claim_id = l.claim_id and f.line = l.line order by f.entry desc limit 1), 'on shelf') = 'on shelf')) as parts`);
  const leaks = ["short-paid", "part credit"] as const;
  return {
    kept: leaks.flatMap((leak) => {
      const of = rows.filter((row) => row.leak === leak);
      if (of.length === 0) return [];
      return [
        {
          leak,
          claims: of.reduce((sum, { claims }) => sum + claims, 0),
          sums: of.map(({ currency, cents }) => ({ currency, cents: Number(cents) })),
          firstDay: of.flatMap(({ first }) => first ?? []).sort()[0],
        },
      ];
    }),
    waitingLines: others?.lines ?? 0,
    partsToGo: others?.parts ?? 0,
  };
}
