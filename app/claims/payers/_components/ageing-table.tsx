import { type Column, Table } from "@/app/_ui/table";
import type { MoneyFacts } from "@/db/queries/money-recovery";
import type { Day } from "@/lib/calendar/day";
import { type AgeingCell, type AgeingKind, ageing } from "@/lib/claims/recovery/ageing";
import type { Currency } from "@/lib/domain/money";
import { formatCount } from "@/lib/format/format-count";
import { formatMoney } from "@/lib/format/format-money";

const names: Readonly<Record<AgeingKind, string>> = {
  unfiled: "Not filed, since completion",
  filed: "Filed and unanswered or unpaid, since sending",
  rejected: "Sent back, since the answer",
};

/** How old the money is; one table for each currency. */
export function AgeingTable({ aged, today }: { readonly aged: MoneyFacts["aged"]; readonly today: Day }) {
  const currencies = [...new Set(aged.map(({ currency }) => currency))].sort();
  return currencies.map((currency) => (
    <Table
      key={currency}
      caption={`How old the money is, ${currency}`}
      columns={columns(currency)}
      rows={ageing(
        aged.filter((each) => each.currency === currency),
        today,
      )}
      rowKey={({ kind, days }) => `${kind} ${days}`}
    />
  ));
}

function columns(currency: Currency): Column<AgeingCell>[] {
  return [
    { key: "kind", head: "Money", cell: ({ kind, days }) => `${names[kind]}: ${days} days` },
    { key: "cases", head: "Cases", kind: "number", cell: ({ cases }) => formatCount(cases) },
    { key: "cents", head: "Amount", kind: "number", cell: ({ cents }) => formatMoney({ cents, currency }) },
  ];
}
