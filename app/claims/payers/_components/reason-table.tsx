import { EstimateText } from "@/app/_ui/estimate-text";
import { type Column, Table } from "@/app/_ui/table";
import type { MoneyFacts } from "@/db/queries/money-recovery";
import { refusalReasons } from "@/lib/claims/life/refusal-reason";
import type { Estimate } from "@/lib/statistics/estimate";
import { sharesOfWhole } from "@/lib/statistics/share-estimate";

interface ReasonRow {
  readonly reason: string;
  readonly estimate: Estimate | undefined;
}

/** Why payers refused or cut, as shares whose ranges hold together. */
export function ReasonTable({ reasons, level }: { readonly reasons: MoneyFacts["reasons"]; readonly level: number }) {
  const shares = reasons.length > 1 ? sharesOfWhole({ counts: reasons.map(({ times }) => times), level }) : [];
  const rows = reasons.map(
    ({ reason, times }, place): ReasonRow => ({
      reason: `${refusalReasons[reason]} (${times})`,
      estimate: shares[place],
    }),
  );
  return <Table caption="Why payers refused or cut" columns={columns} rows={rows} rowKey={({ reason }) => reason} />;
}

const columns: readonly Column<ReasonRow>[] = [
  { key: "reason", head: "Reason", cell: ({ reason }) => reason },
  {
    key: "share",
    head: "Share of all reasons",
    cell: ({ estimate }) =>
      estimate === undefined ? "the only reason" : <EstimateText estimate={estimate} counted="jobs" />,
  },
];
