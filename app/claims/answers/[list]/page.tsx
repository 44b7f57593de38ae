import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { AddressReader, type AddressValues } from "@/app/_address/address-reader";
import { mayOpen } from "@/app/_people/may-open";
import { Field } from "@/app/_ui/field";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadRemittance, loadSamePayment, type RemittanceFull } from "@/db/queries/money-remittances";
import { loadWordingVersions } from "@/db/queries/payer-wordings";
import { type LineFate, lineFateKeys, lineFates } from "@/lib/claims/remittance/line-fate";
import { formatCounted } from "@/lib/format/format-count";
import { formatPlainDay } from "@/lib/format/format-day";
import { formatMoney } from "@/lib/format/format-money";
import { ColumnsForm } from "./columns-form";
import { LineTable } from "./line-table";
import { ListForm } from "./list-form";
import { WordingForms } from "./wording-forms";

export const metadata: Metadata = { title: "A payer’s list" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly list: string }>;
  readonly searchParams: Promise<AddressValues>;
}

export default async function ListPage({ params, searchParams }: Props) {
  await mayOpen("/claims/answers/[list]");
  const id = Number((await params).list);
  const address = new AddressReader(await searchParams, ["came"]);
  const isKnown = address.text("came") === "again";
  const { list, samePayment, versionsOf } = await readOnly(async (db) => {
    const list = Number.isSafeInteger(id) && id > 0 && id < 2 ** 31 ? await loadRemittance(db, id) : undefined;
    if (list === undefined) return { list, samePayment: [], versionsOf: () => [] };
    const versionsOf = await loadWordingVersions(db, list.payer);
    return { list, versionsOf, samePayment: await loadSamePayment(db, list) };
  });
  if (list === undefined) notFound();
  const { remittanceId, lines, version, undoneBy } = list;
  const isPosted = (lines.posted ?? 0) > 0;
  return (
    <Page title={finding(list)} above={<Link href="/claims/answers">Answers</Link>} margin={<Basis list={list} />} wide>
      {isKnown && (
        <Notice
          status="note"
          title="You sent this file before, and this is its list. Nothing was read or posted twice."
        />
      )}
      {samePayment.map(({ remittanceId: other, fileName }) => (
        <Notice key={other} status="watch" title={`Another list names payment ${list.reference} too`}>
          <p>
            <Link href={`/claims/answers/${other}`}>{fileName}</Link>. If it is the same payment, set these lines aside.
          </p>
        </Notice>
      ))}
      {!list.isConfirmed && <ColumnsForm list={list} />}
      {(lines.ready ?? 0) > 0 && (
        <ListForm
          does="post"
          list={remittanceId}
          hidden={{ version }}
          button={`Post ${formatCounted(lines.ready ?? 0, "line")}`}
        />
      )}
      <WordingForms list={list} versionsOf={versionsOf} />
      {sections.map((fate) => (
        <LineTable key={fate} list={list} fate={fate} />
      ))}
      {list.isConfirmed && !isPosted && undoneBy === undefined && (
        <details>
          <summary>Read the columns otherwise</summary>
          <ColumnsForm list={list} />
        </details>
      )}
      {isPosted && (
        <details>
          <summary>Take this list back</summary>
          <ListForm does="undo" list={remittanceId} button="Take the whole list back" weight="plain">
            <Field label="Why" name="reason" required />
          </ListForm>
        </details>
      )}
    </Page>
  );
}

/** What waits for somebody first. */
const sections: readonly LineFate[] = ["tray", "asked", "unreadable", "ready", "posted", "set aside", "undone"];

function finding({ payer, isConfirmed, lines, undoneBy }: RemittanceFull): string {
  if (undoneBy !== undefined) return `This list of ${payer} was taken back`;
  if (!isConfirmed) return `Say what the columns of this list of ${payer} hold`;
  const waiting = (lines.tray ?? 0) + (lines.asked ?? 0) + (lines.unreadable ?? 0);
  if (waiting > 0) return `${formatCounted(waiting, "line")} of this list ${waiting === 1 ? "needs" : "need"} somebody`;
  return (lines.ready ?? 0) > 0
    ? `${formatCounted(lines.ready ?? 0, "line")} can be posted`
    : "Every line of this list is seen to";
}

function Basis({ list }: { readonly list: RemittanceFull }) {
  const { fileName, payer, reference, paidOn, rows, lines } = list;
  const fates = lineFateKeys.flatMap((fate) =>
    (lines[fate] ?? 0) === 0 ? [] : [`${lineFates[fate]}: ${lines[fate]}`],
  );
  const cents = rows.reduce((sum, row) => sum + (row.currency === list.currency ? (row.paidCents ?? 0) : 0), 0);
  return (
    <>
      <p>
        {fileName}: {payer}, payment {reference} of {formatPlainDay(paidOn)}.
      </p>
      {rows.length > 0 && (
        <p>
          {formatCounted(rows.length, "line")}, together {formatMoney({ cents, currency: list.currency })}.{" "}
          {fates.join("; ")}.
        </p>
      )}
      <p>Row numbers are those that a spreadsheet shows.</p>
    </>
  );
}
