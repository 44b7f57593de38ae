import Link from "next/link";
import { Field } from "@/app/_ui/field";
import { type Column, Table } from "@/app/_ui/table";
import type { RemittanceFull, RemittanceLineRow } from "@/db/queries/money-remittances";
import { refusalReasons } from "@/lib/claims/life/refusal-reason";
import { type LineFate, lineFates } from "@/lib/claims/remittance/line-fate";
import { formatMoney } from "@/lib/format/format-money";
import { ListForm } from "./list-form";

interface Props {
  readonly list: RemittanceFull;
  readonly fate: LineFate;
}

/** Lines of one fate, with what can be done about them. */
export function LineTable({ list, fate }: Props) {
  const rows = list.rows.filter((line) => line.fate === fate);
  if (rows.length === 0) return null;
  return (
    <Table
      caption={`${lineFates[fate]} (${rows.length})`}
      columns={columns(list, fate)}
      rows={rows}
      rowKey={({ row }) => String(row)}
    />
  );
}

function columns({ remittanceId }: RemittanceFull, fate: LineFate): Column<RemittanceLineRow>[] {
  const isOpen = fate === "tray" || fate === "asked" || fate === "unreadable";
  return [
    { key: "row", head: "Row", cell: ({ row }) => row },
    {
      key: "cells",
      head: "In the list",
      wideOnly: true,
      cell: ({ cells }) => <span className="small">{cells.join(" · ")}</span>,
    },
    {
      key: "paid",
      head: "Paid",
      kind: "number",
      cell: ({ paidCents: cents, currency }) =>
        cents === undefined || currency === undefined ? "–" : formatMoney({ cents, currency }),
    },
    { key: "claim", head: "Claim", cell: (line) => <ClaimCell line={line} /> },
    ...(isOpen
      ? [
          {
            key: "do",
            head: "What becomes of it",
            cell: (line: RemittanceLineRow) => <DecideCell line={line} list={remittanceId} />,
          },
        ]
      : []),
  ];
}

function ClaimCell({ line: { shares, sentence, reason, match } }: { readonly line: RemittanceLineRow }) {
  const numbers =
    shares.length > 0
      ? shares.map(({ claimNumber }) => claimNumber)
      : match?.kind === "unmatched"
        ? match.candidates
        : [];
  return (
    <div>
      {numbers.map((number) => (
        <span key={number} className="nowrap">
          <Link href={`/claims/${encodeURIComponent(number)}`}>{number}</Link>{" "}
        </span>
      ))}
      <span className="small">{sentence}</span>
      {reason !== undefined && <span className="small"> {refusalReasons[reason]}.</span>}
    </div>
  );
}

function DecideCell({ line, list }: { readonly line: RemittanceLineRow; readonly list: number }) {
  const { row, fate, match } = line;
  const candidate = match?.kind === "unmatched" ? match.candidates[0] : undefined;
  return (
    <div className="stack-tight">
      {fate === "asked" && (
        <>
          <ListForm does="decide" list={list} hidden={{ row, say: "yes" }} button="Yes, this claim" />
          <ListForm does="decide" list={list} hidden={{ row, say: "no" }} button="No, to the tray" weight="plain" />
        </>
      )}
      {fate === "tray" && (
        <details>
          <summary>Name the claim</summary>
          <ListForm does="decide" list={list} hidden={{ row, say: "claim" }} button="It pays this claim" weight="plain">
            <Field label={`Claim number for row ${row}`} name={`text claim ${row}`} value={candidate} />
          </ListForm>
        </details>
      )}
      {fate !== "asked" && (
        <details>
          <summary>Set aside</summary>
          <ListForm does="decide" list={list} hidden={{ row, say: "aside" }} button="Set aside" weight="plain">
            <Field label={`Why row ${row} is set aside`} name={`text aside ${row}`} />
          </ListForm>
        </details>
      )}
    </div>
  );
}
