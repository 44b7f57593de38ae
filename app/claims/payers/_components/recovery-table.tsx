import { EstimateText } from "@/app/_ui/estimate-text";
import { type Column, Table } from "@/app/_ui/table";
import type { PayerRecovery } from "@/lib/claims/recovery/payer-recovery";
import { formatCount } from "@/lib/format/format-count";
import { formatMoney } from "@/lib/format/format-money";
import { shareEstimate } from "@/lib/statistics/share-estimate";
import type { DaysToPayment } from "../days-to-payment";

interface Props {
  readonly rows: readonly PayerRecovery[];
  readonly waits: ReadonlyMap<string, DaysToPayment>;
  readonly level: number;
}

/** What each payer was asked, and what came of it. */
export function RecoveryTable({ rows, waits, level }: Props) {
  return (
    <>
      <Table
        caption="What payers were asked and what came of it"
        columns={moneyColumns()}
        rows={rows}
        rowKey={rowKey}
        narrow="scroll"
      />
      <Table caption="How payers answer" columns={answerColumns(waits, level)} rows={rows} rowKey={rowKey} />
    </>
  );
}

function rowKey({ payer, currency }: PayerRecovery): string {
  return `${payer} ${currency}`;
}

function moneyColumns(): Column<PayerRecovery>[] {
  const money = (key: string, head: string, of: (row: PayerRecovery) => number): Column<PayerRecovery> => ({
    key,
    head,
    kind: "number",
    cell: (row) => formatMoney({ cents: of(row), currency: row.currency }),
  });
  return [
    { key: "payer", head: "Payer", cell: ({ payer }) => payer },
    { key: "claims", head: "Claims", kind: "number", cell: ({ claims }) => formatCount(claims) },
    money("asked", "Asked", (row) => row.askedCents),
    money("approved", "Approved", (row) => row.approvedCents),
    money("kept", "Paid and kept", (row) => row.keptCents),
    money("open", "Open", (row) => row.openCents),
    money("short", "Short-paid", (row) => row.shortCents),
    money("back", "Taken back", (row) => row.clawedBackCents),
    money("off", "Written off", (row) => row.writtenOffCents),
  ];
}

function answerColumns(waits: Props["waits"], level: number): Column<PayerRecovery>[] {
  return [
    { key: "payer", head: "Payer", cell: ({ payer }) => payer },
    { key: "first", head: "Accepted at first", cell: (row) => <FirstPass row={row} level={level} /> },
    { key: "days", head: "Days to payment", cell: ({ payer }) => daysInWords(waits.get(payer)) },
  ];
}

function FirstPass({ row, level }: { readonly row: PayerRecovery; readonly level: number }) {
  const { answered: trials, acceptedAtFirst: events } = row;
  if (trials === 0) return "no answer yet";
  return <EstimateText estimate={shareEstimate({ events, trials, level, method: "wilson" })} counted="jobs" />;
}

function daysInWords(wait: DaysToPayment | undefined): string {
  if (wait === undefined || wait.sent === 0) return "nothing sent yet";
  const made = `${formatCount(wait.paid)} of ${formatCount(wait.sent)} paid`;
  if (wait.kind === "not yet") return `too few to tell, ${made}`;
  return `half within ${wait.days} (${wait.low} ${wait.high === undefined ? "or more" : `to ${wait.high}`}), ${made}`;
}
