import { DayRuler } from "@/app/_charts/day-ruler";
import { StatusWord } from "@/app/_ui/status-word";
import { type Column, Table } from "@/app/_ui/table";
import { Tag } from "@/app/_ui/tag";
import type { ClaimListRow, ClaimSort } from "@/db/queries/claim-list";
import { type Day, daysBetween } from "@/lib/calendar/day";
import { answerDays, waitingStates } from "@/lib/claims/life/waiting";
import { formatCounted } from "@/lib/format/format-count";
import { formatPlainDay } from "@/lib/format/format-day";
import { formatMoney } from "@/lib/format/format-money";
import { type ClaimsAddress, claimsHref } from "../read-claims-address";
import { ChooseRow } from "./choose-row";
import { tabNames } from "./claim-tabs";

interface Props {
  readonly address: ClaimsAddress;
  /** Those of the page. */
  readonly rows: readonly ClaimListRow[];
  /** How many the list has on all pages. */
  readonly fitting: number;
  readonly today: Day;
  /** Rows can be chosen, to be sent together. */
  readonly choosable: boolean;
}

/** One list of claims: what it is, what is next and by when, how old, how much. */
export function ClaimTable({ address, rows, fitting, today, choosable }: Props) {
  return (
    <Table
      caption={`${tabNames[address.tab]}: ${formatCounted(fitting, "claim")}`}
      columns={columns(address, today, choosable)}
      rows={rows}
      rowKey={(row) => row.claimNumber}
    />
  );
}

function columns(address: ClaimsAddress, today: Day, choosable: boolean): Column<ClaimListRow>[] {
  const sorted = (sort: ClaimSort, direction: "ascending" | "descending") => ({
    sortHref: claimsHref({ ...address, sort, page: 1 }),
    sorted: (address.sort ?? "due") === sort ? direction : undefined,
  });
  const money = (cents: number, { currency }: ClaimListRow) => formatMoney({ cents, currency });
  return [
    {
      key: "claim",
      head: "Claim",
      cell: (row) => (
        <span className="nowrap">
          {choosable && <ChooseRow value={row.claimNumber} label={`Claim ${row.claimNumber}`} />}
          <Tag href={`/claims/${encodeURIComponent(row.claimNumber)}`}>{row.claimNumber}</Tag>
        </span>
      ),
    },
    { key: "payer", head: "Payer", ...sorted("payer", "ascending"), cell: (row) => row.payer },
    {
      key: "unit",
      head: "Unit",
      wideOnly: true,
      cell: (row) => <Tag href={`/units/${row.unitId}`}>{row.serial ?? "no serial"}</Tag>,
    },
    { key: "state", head: "State", cell: (row) => row.state },
    {
      key: "due",
      head: dueHeads[address.tab],
      ...sorted("due", "ascending"),
      cell: (row) => <Due row={row} today={today} />,
    },
    { key: "age", head: "Age", ...sorted("sent", "ascending"), wideOnly: true, cell: (row) => ageOf(row, today) },
    {
      key: "amount",
      head: "Asked",
      kind: "number",
      ...sorted("amount", "descending"),
      cell: (row) => money(row.claimedCents, row),
    },
    ...(address.tab === "drafts"
      ? []
      : [
          {
            key: "open",
            head: address.tab === "settled" ? "Paid" : "Open",
            kind: "number" as const,
            ...(address.tab === "settled" ? {} : sorted("open", "descending")),
            cell: (row: ClaimListRow) => money(address.tab === "settled" ? row.paidCents : row.openCents, row),
          },
        ]),
  ];
}

const dueHeads: Readonly<Record<ClaimsAddress["tab"], string>> = {
  unclaimed: "File by",
  drafts: "File by",
  sent: "Answer",
  answered: "Send again by",
  "short-paid": "Keep the part until",
  settled: "Keep the part until",
};

/** The next day that somebody waits for. */
function Due({ row, today }: { readonly row: ClaimListRow; readonly today: Day }) {
  if (row.state === "draft" && row.fileBy !== undefined)
    return <DayRuler from={row.completedOn} due={row.fileBy} today={today} />;
  if (row.resubmitBy !== undefined && row.answeredOn !== undefined)
    return <DayRuler from={row.answeredOn} due={row.resubmitBy} today={today} />;
  if (row.lastSentOn !== undefined && waitingStates.some((state) => state === row.state)) {
    const waited = daysBetween(row.lastSentOn, today);
    if (waited > answerDays)
      return <StatusWord status="watch">{`${formatCounted(waited - answerDays, "day")} late`}</StatusWord>;
    return `within ${formatCounted(answerDays - waited, "day")}`;
  }
  if (row.keepPartUntil !== undefined && row.keepPartUntil >= today) return formatPlainDay(row.keepPartUntil);
  return "–";
}

/** Days since what happened last: completion for a draft, sending while it waits, the answer afterwards. */
function ageOf(row: ClaimListRow, today: Day): string {
  const days = (since: Day, what: string) =>
    `${formatCounted(Math.max(0, daysBetween(since, today)), "day")} since ${what}`;
  if (row.lastSentOn === undefined) return days(row.completedOn, "completion");
  if (row.answeredOn !== undefined && row.answeredOn >= row.lastSentOn) return days(row.answeredOn, "the answer");
  return days(row.lastSentOn, "sending");
}
