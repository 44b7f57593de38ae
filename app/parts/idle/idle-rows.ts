import type { ListedPart } from "@/db/queries/part-list";
import type { Currency } from "@/lib/domain/money";
import { formatCounted } from "@/lib/format/format-count";
import { formatMoney } from "@/lib/format/format-money";
import { type IdleStock, idleStock } from "@/lib/stock/idle-stock";

export interface IdleRow extends ListedPart {
  readonly idle: Exclude<IdleStock, { kind: "in-use" }>;
  /** Undefined where the cost is not known. */
  readonly cents: number | undefined;
}

/** What lies and is hardly asked for, the dearest first. */
export function idleRows(parts: readonly ListedPart[]): readonly IdleRow[] {
  return parts
    .flatMap((part): readonly IdleRow[] => {
      const idle = idleStock(part.plan, part.onHand ?? 0);
      if (idle.kind === "in-use") return [];
      return [
        { ...part, idle, cents: part.unitCostCents === undefined ? undefined : idle.pieces * part.unitCostCents },
      ];
    })
    .sort((a, b) => (b.cents ?? 0) - (a.cents ?? 0) || a.partNumber.localeCompare(b.partNumber, "en"));
}

export function idleFinding(rows: readonly IdleRow[], currency: Currency): string {
  if (rows.length === 0) return "No stock lies idle";
  const cents = rows.reduce((sum, row) => sum + (row.cents ?? 0), 0);
  return `${formatMoney({ cents, currency })} lies in ${formatCounted(rows.length, "part")} that ${rows.length === 1 ? "is" : "are"} hardly asked for`;
}
