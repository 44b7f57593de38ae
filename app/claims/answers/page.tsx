import type { Metadata } from "next";
import Link from "next/link";
import { AddressReader, type AddressValues } from "@/app/_address/address-reader";
import { todayIn } from "@/app/_clock/today";
import { mayOpen } from "@/app/_people/may-open";
import { EmptyState } from "@/app/_ui/empty-state";
import { Field } from "@/app/_ui/field";
import { FilterForm } from "@/app/_ui/filter-form";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { SelectField } from "@/app/_ui/select-field";
import { type Column, Table } from "@/app/_ui/table";
import { readOnly } from "@/db/client";
import { loadPayersOfClaims } from "@/db/queries/money-awaited";
import { loadRemittances, type RemittanceFilter, type RemittanceSummary } from "@/db/queries/money-remittances";
import { loadShop } from "@/db/queries/shop";
import { currencies } from "@/lib/domain/money";
import { formatCounted } from "@/lib/format/format-count";
import { formatPlainDay } from "@/lib/format/format-day";
import { formatMoney } from "@/lib/format/format-money";
import { SendList } from "./_components/send-list";

export const metadata: Metadata = { title: "Answers" };
export const dynamic = "force-dynamic";

interface Props {
  readonly searchParams: Promise<AddressValues>;
}

export default async function AnswersPage({ searchParams }: Props) {
  await mayOpen("/claims/answers");
  const address = new AddressReader(await searchParams, ["payer", "words"]);
  const filter = { payer: address.text("payer"), words: address.text("words") };
  const { lists, payers, today } = await readOnly(async (db) => ({
    lists: await loadRemittances(db, filter),
    payers: await loadPayersOfClaims(db),
    today: todayIn((await loadShop(db)).timeZone),
  }));
  const isFiltered = filter.payer !== undefined || filter.words !== undefined;
  const waiting = lists.reduce((sum, list) => sum + waitingLines(list), 0);
  return (
    <Page
      title={
        waiting === 0
          ? "No line of a payer’s list waits"
          : `${formatCounted(waiting, "line")} of payers’ lists ${waiting === 1 ? "waits" : "wait"} for somebody`
      }
      above={<Link href="/claims">Claims</Link>}
      margin={<Basis />}
    >
      <section className="stack">
        <h2>A new list</h2>
        <SendList
          payers={payers}
          currencies={currencies.map((value) => ({ value, name: value }))}
          currency="USD"
          today={today}
        />
      </section>
      <section className="stack">
        <h2>Lists</h2>
        {address.notices.map((notice) => (
          <Notice key={notice} status="note" title={notice} />
        ))}
        <FilterForm
          action="/claims/answers"
          words={`${filterInWords(filter)} — ${formatCounted(lists.length, "list")}`}
          clearHref={isFiltered ? "/claims/answers" : undefined}
        >
          <SelectField
            label="Payer"
            name="payer"
            none="Any"
            value={filter.payer}
            choices={payers.map((name) => ({ value: name, name }))}
          />
          <Field
            label="Claim, payment, serial or words"
            name="words"
            hint="Anywhere in a list or its lines"
            value={filter.words}
          />
        </FilterForm>
        {lists.length === 0 ? (
          <EmptyState
            kind={isFiltered ? "filtered-away" : "never-used"}
            title={isFiltered ? "No list fits this filter" : "No payer’s list has been read yet"}
          />
        ) : (
          <Table
            caption="Payers’ lists, the latest payment first"
            captionHidden
            columns={columns}
            rows={lists}
            rowKey={({ remittanceId }) => String(remittanceId)}
          />
        )}
      </section>
    </Page>
  );
}

function filterInWords({ payer, words }: RemittanceFilter): string {
  const said = words === undefined ? undefined : `with “${words}”`;
  return [payer ?? "Lists of all payers", said].filter((word) => word !== undefined).join(", ");
}

function waitingLines({ lines, undoneBy }: RemittanceSummary): number {
  if (undoneBy !== undefined) return 0;
  return (lines.ready ?? 0) + (lines.asked ?? 0) + (lines.tray ?? 0) + (lines.unreadable ?? 0);
}

const columns: readonly Column<RemittanceSummary>[] = [
  {
    key: "list",
    head: "List",
    cell: ({ remittanceId, fileName }) => <Link href={`/claims/answers/${remittanceId}`}>{fileName}</Link>,
  },
  { key: "payer", head: "Payer", cell: ({ payer, reference }) => `${payer}, ${reference}` },
  { key: "on", head: "Paid on", wideOnly: true, cell: ({ paidOn }) => formatPlainDay(paidOn) },
  {
    key: "posted",
    head: "Posted",
    kind: "number",
    cell: ({ postedCents, currency }) => formatMoney({ cents: postedCents, currency }),
  },
  { key: "waiting", head: "Waiting", cell: stateOf },
];

function stateOf(list: RemittanceSummary): string {
  if (list.undoneBy !== undefined) return "taken back";
  if (!list.isConfirmed) return "columns to confirm";
  const waiting = waitingLines(list);
  return waiting === 0 ? "nothing" : formatCounted(waiting, "line");
}

function Basis() {
  return (
    <>
      <p>
        A line is matched to a claim by our number, the payer’s, or our job number, and then is ready. By serial, day
        and amount together it is only likely, and waits for a yes. Anything else lies in the tray: money is never
        posted on a guess.
      </p>
      <p>Every line of a list is posted, waits, or was set aside with a reason; the counts add up to the file.</p>
      <p>The same file is never posted twice. A list that was posted by mistake is taken back whole.</p>
    </>
  );
}
