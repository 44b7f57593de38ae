import { type Definition, DefinitionList } from "@/app/_ui/definition-list";
import { type Column, Table } from "@/app/_ui/table";
import { addDays, type Day, daysBetween } from "@/lib/calendar/day";
import type { ClaimStanding, LineStanding } from "@/lib/claims/life/claim-standing";
import type { ClaimDeadlines } from "@/lib/claims/life/judge-act";
import { answerDays } from "@/lib/claims/life/waiting";
import type { Currency } from "@/lib/domain/money";
import { formatDay, formatDaysLeft } from "@/lib/format/format-day";
import { formatMoney } from "@/lib/format/format-money";

interface Props {
  readonly standing: ClaimStanding;
  readonly deadlines: ClaimDeadlines;
  readonly currency: Currency;
  readonly today: Day;
}

/** Where a claim that was sent stands: line by line, and which days are next. */
export function ClaimStandingView({ standing, deadlines, currency, today }: Props) {
  const money = (cents: number) => formatMoney({ cents, currency });
  return (
    <>
      <Table
        caption="Line by line"
        columns={lineColumns(money, standing.clawedBackCents > 0)}
        rows={standing.lines}
        rowKey={({ line }) => String(line)}
      />
      <DefinitionList
        items={[
          { term: "Asked", detail: money(standing.askedCents) },
          { term: "Paid", detail: money(standing.paidCents) },
          ...(standing.clawedBackCents > 0 ? [{ term: "Taken back", detail: money(standing.clawedBackCents) }] : []),
          { term: "Still open", detail: money(standing.openCents) },
          ...days(standing, deadlines, today),
        ]}
      />
    </>
  );
}

function days({ state, lastSentOn, filings }: ClaimStanding, deadlines: ClaimDeadlines, today: Day): Definition[] {
  const until = (day: Day) => `${formatDay(day)}, ${formatDaysLeft(daysBetween(today, day))}`;
  const waits = state === "sent" || state === "received" || state === "appealed";
  const { resubmitBy, keepPartUntil, mayFileAgain } = deadlines;
  const refused = state === "rejected" || state === "needs correction";
  return [
    ...(lastSentOn === undefined
      ? []
      : [{ term: "Sent", detail: formatDay(lastSentOn), source: filings === 1 ? "once" : `${filings} times` }]),
    ...(waits && lastSentOn !== undefined
      ? [
          {
            term: "Answer expected by",
            detail: until(addDays(lastSentOn, answerDays)),
            source: `${answerDays} days after sending: common practice, no source`,
          },
        ]
      : []),
    ...(resubmitBy === undefined
      ? []
      : [{ term: "Correct and send again by", detail: until(resubmitBy), source: "the policy’s clock" }]),
    ...(refused && !mayFileAgain
      ? [{ term: "Send again", detail: "The policy lets it be filed no more often. Appeal, or ask the payer first." }]
      : []),
    ...(keepPartUntil === undefined
      ? []
      : [{ term: "Keep the failed part until", detail: until(keepPartUntil), source: "the policy’s clock" }]),
  ];
}

function lineColumns(money: (cents: number) => string, withTakenBack: boolean): Column<LineStanding>[] {
  const known = (cents: number | undefined) => (cents === undefined ? "–" : money(cents));
  return [
    { key: "line", head: "Line", cell: ({ line, item }) => `${line}, ${item}` },
    { key: "asked", head: "Asked", kind: "number", cell: ({ askedCents }) => money(askedCents) },
    { key: "approved", head: "Approved", kind: "number", cell: ({ approvedCents }) => known(approvedCents) },
    { key: "paid", head: "Paid", kind: "number", cell: ({ paidCents }) => money(paidCents) },
    ...(withTakenBack
      ? [
          {
            key: "back",
            head: "Taken back",
            kind: "number" as const,
            cell: ({ clawedBackCents }: LineStanding) => money(clawedBackCents),
          },
        ]
      : []),
    {
      key: "short",
      head: "Short",
      kind: "number",
      wideOnly: true,
      cell: ({ askedCents, paidCents }) => money(Math.max(0, askedCents - paidCents)),
    },
  ];
}
