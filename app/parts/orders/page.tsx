import type { Metadata } from "next";
import Link from "next/link";
import type { AddressValues } from "@/app/_address/address-reader";
import { todayIn } from "@/app/_clock/today";
import { mayOpen } from "@/app/_people/may-open";
import { ButtonLink } from "@/app/_ui/button-link";
import { EmptyState } from "@/app/_ui/empty-state";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadOrderList } from "@/db/queries/part-orders";
import { loadShop } from "@/db/queries/shop";
import { addDays } from "@/lib/calendar/day";
import { formatCounted } from "@/lib/format/format-count";
import { readDone } from "../_components/done-words";
import { PartsTabs } from "../_components/parts-tabs";
import { OrderTable } from "./_components/order-table";
import { ordersFinding } from "./order-words";

export const metadata: Metadata = { title: "Order list" };
export const dynamic = "force-dynamic";

/** How long a closed line stays in sight. */
const closedDays = 30;

export default async function OrdersPage({ searchParams }: { readonly searchParams: Promise<AddressValues> }) {
  await mayOpen("/parts/orders");
  const said = readDone((await searchParams).done);
  const { lines, today } = await readOnly(async (db) => {
    const today = todayIn((await loadShop(db)).timeZone);
    return { today, lines: await loadOrderList(db, addDays(today, -closedDays)) };
  });
  const of = (...states: readonly string[]) => lines.filter(({ state }) => states.includes(state));
  const groups = [
    { caption: "To be ordered", lines: of("draft") },
    { caption: "On the way", lines: of("ordered") },
    { caption: `Closed in the last ${closedDays} days`, lines: of("received", "cancelled") },
  ];
  return (
    <Page
      title={ordersFinding(lines, today)}
      above={<Link href="/parts">Parts</Link>}
      margin={<Basis />}
      actions={
        <>
          <ButtonLink href="/parts/orders/new" weight="main">
            Add a line
          </ButtonLink>
          {lines.length > 0 && (
            <ButtonLink
              href="/parts/orders/orders.csv"
              isExport
            >{`CSV of ${formatCounted(lines.length, "line")}`}</ButtonLink>
          )}
        </>
      }
      wide
    >
      <PartsTabs current="orders" />
      {said !== undefined && <Notice status="fine" title={said} />}
      {lines.length === 0 && (
        <EmptyState kind="never-used" title="No line yet">
          <p>
            Lines come from <Link href="/parts?show=order">the parts that have to be ordered</Link>, or by hand.
          </p>
        </EmptyState>
      )}
      {groups.map((group) => group.lines.length > 0 && <OrderTable key={group.caption} {...group} today={today} />)}
    </Page>
  );
}

function Basis() {
  return (
    <>
      <p>What is ordered counts as on order from the day it is marked so; drafts do not count.</p>
      <p>
        What comes is entered in the ledger of stock, in as many deliveries as there are. Days from order to the last
        delivery become the part’s lead time.
      </p>
    </>
  );
}
