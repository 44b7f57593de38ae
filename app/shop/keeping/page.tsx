import type { Metadata } from "next";
import Link from "next/link";
import { mayOpen } from "@/app/_people/may-open";
import { Page } from "@/app/_ui/page";
import { Plate } from "@/app/_ui/plate";
import { type Column, Table } from "@/app/_ui/table";
import { readOnly } from "@/db/client";
import { type ErasureLine, type KeptFor, loadKeeping } from "@/db/queries/keeping";
import { loadShop } from "@/db/queries/shop";
import { instantOnClock } from "@/lib/calendar/instant";
import { formatCounted } from "@/lib/format/format-count";
import { ErasureForm } from "./erasure-form";
import { TimesForm } from "./times-form";

export const metadata: Metadata = { title: "Erasing and keeping" };
export const dynamic = "force-dynamic";

export default async function KeepingPage() {
  await mayOpen("/shop/keeping");
  const { keeping, timeZone } = await readOnly(async (db) => ({
    keeping: await loadKeeping(db),
    timeZone: (await loadShop(db)).timeZone,
  }));
  const { times, erasures } = keeping;
  return (
    <Page
      title={
        erasures.length === 0
          ? "No customer was forgotten yet"
          : `${formatCounted(erasures.length, "customer")} forgotten`
      }
      above={<Link href="/shop">Shop</Link>}
      margin={<Basis />}
      wide
    >
      <Plate title="Forget a customer">
        <ErasureForm />
      </Plate>
      {erasures.length > 0 && (
        <Table
          caption="Done so far, the latest first"
          columns={erasureColumns(timeZone)}
          rows={erasures}
          rowKey={({ erasureId }) => erasureId}
        />
      )}
      <Plate title="How long things are kept">
        <Table
          caption="What goes by itself, every night"
          columns={timeColumns}
          rows={times}
          rowKey={({ kind }) => kind}
        />
        <TimesForm kinds={times.map(({ kind }) => ({ value: kind, name: kind }))} />
      </Plate>
    </Page>
  );
}

const timeColumns: readonly Column<KeptFor>[] = [
  { key: "kind", head: "Kind", cell: ({ kind }) => kind },
  { key: "what", head: "What it is", cell: ({ what }) => what, wideOnly: true },
  {
    key: "days",
    head: "Kept for",
    cell: ({ days }) => (days === undefined ? "good" : formatCounted(days, "day")),
  },
  { key: "by", head: "Set by", cell: ({ setBy }) => setBy ?? "the program's own choice" },
];

function erasureColumns(timeZone: string): readonly Column<ErasureLine>[] {
  return [
    { key: "at", head: "When", cell: ({ at }) => instantOnClock(at, timeZone) },
    { key: "by", head: "By", cell: ({ by }) => by },
    { key: "reason", head: "Why", cell: ({ reason }) => reason },
    { key: "jobs", head: "Jobs", kind: "number", cell: ({ jobs }) => jobs },
    { key: "cells", head: "Cells erased", kind: "number", cell: ({ cells }) => cells },
    { key: "kept", head: "Kept with a reason", kind: "number", cell: ({ kept }) => kept, wideOnly: true },
  ];
}

function Basis() {
  return (
    <>
      <p>
        Names go from every text; signatures and receipts go. Units, jobs, readings, sums and rates stay. What was sent
        to a payer stays with the claim and is listed.
      </p>
      <p>
        Which papers have to be kept, and for how long, is a matter of law where you work. When the nightly removal last
        ran stands under <Link href="/shop/health">Health</Link>.
      </p>
    </>
  );
}
