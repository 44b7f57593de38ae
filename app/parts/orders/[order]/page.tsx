import { randomUUID } from "node:crypto";
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { todayIn } from "@/app/_clock/today";
import { mayOpen } from "@/app/_people/may-open";
import { Page } from "@/app/_ui/page";
import { Tag } from "@/app/_ui/tag";
import { readOnly } from "@/db/client";
import { loadOrderEvents, loadOrderLine } from "@/db/queries/part-orders";
import { loadShop } from "@/db/queries/shop";
import { loadTechnicians } from "@/db/queries/stock-places";
import { addDays } from "@/lib/calendar/day";
import { formatCounted } from "@/lib/format/format-count";
import { partHref } from "../../read-parts-address";
import { amountWords, stateWords } from "../order-words";
import { EventTable } from "./event-table";
import { ChangeForm, OrderedForm, PlainActForm, ReceiveForm } from "./order-forms";

export const metadata: Metadata = { title: "Line of the order list" };
export const dynamic = "force-dynamic";

export default async function OrderLinePage({ params }: { readonly params: Promise<{ readonly order: string }> }) {
  await mayOpen("/parts/orders/[order]");
  const { order } = await params;
  if (!/^[1-9]\d{0,8}$/.test(order)) notFound();
  const { line, events, today, technicians } = await readOnly(async (db) => {
    const today = todayIn((await loadShop(db)).timeZone);
    return {
      today,
      line: await loadOrderLine(db, Number(order)),
      events: await loadOrderEvents(db, Number(order)),
      technicians: await loadTechnicians(db, addDays(today, -365)),
    };
  });
  if (line === undefined) notFound();
  const shared = { line, today, formKey: randomUUID() };
  return (
    <Page
      above={<Link href="/parts/orders">Order list</Link>}
      title={`${formatCounted(line.quantity, "piece")} of ${line.description || line.partNumber}: ${stateWords(line, today)}`}
      margin={
        <>
          <p>
            <Tag href={partHref(line.partKey)}>{line.partNumber}</Tag>
          </p>
          <p>{amountWords(line)}</p>
          {line.why !== "" && <p>Why so many, on the day it was added: {line.why}</p>}
        </>
      }
    >
      {line.state === "ordered" && <ReceiveForm {...shared} technicians={technicians} />}
      {line.state === "draft" && <OrderedForm {...shared} />}
      {(line.state === "draft" || line.state === "ordered") && (
        <>
          <ChangeForm {...shared} />
          <PlainActForm {...shared} act="cancelled" submit="Cancel this line" />
        </>
      )}
      {line.state === "cancelled" && <PlainActForm {...shared} act="reopened" submit="Take it up again" />}
      <EventTable events={events} />
    </Page>
  );
}
