import type { Metadata } from "next";
import Link from "next/link";
import { todayIn } from "@/app/_clock/today";
import { mayOpen } from "@/app/_people/may-open";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadOlderStock } from "@/db/queries/older-stock";
import { loadOutlookState, loadPartList } from "@/db/queries/part-list";
import { loadShop } from "@/db/queries/shop";
import { FreshnessNotice } from "../_components/freshness-notice";
import { PartsTabs } from "../_components/parts-tabs";
import { settleState } from "../_work/settle-state";
import { idleFinding, idleRows } from "./idle-rows";
import { IdleTable, LastBuyTable, OlderTable } from "./idle-tables";

export const metadata: Metadata = { title: "Idle stock and last buys" };
export const dynamic = "force-dynamic";

export default async function IdlePage() {
  await mayOpen("/parts/idle");
  const { parts, older, state, today, currency } = await readOnly(async (db) => {
    const shop = await loadShop(db);
    return {
      currency: shop.currency,
      today: todayIn(shop.timeZone),
      parts: await loadPartList(db),
      older: await loadOlderStock(db),
      state: await loadOutlookState(db),
    };
  });
  const idle = idleRows(parts);
  const ending = parts.filter(({ lastBuyOn }) => lastBuyOn !== undefined);
  return (
    <Page title={idleFinding(idle, currency)} above={<Link href="/parts">Parts</Link>} margin={<Basis />} wide>
      <PartsTabs current="idle" />
      <FreshnessNotice freshness={settleState(state, today)} forecastFrom={state.forecastFrom} />
      {idle.length === 0 ? (
        <EmptyState kind="nothing-due" title="Nothing lies that is not asked for" />
      ) : (
        <IdleTable rows={idle} currency={currency} />
      )}
      {older.length > 0 && <OlderTable rows={older} />}
      <section className="stack-tight">
        <h2>Last buys</h2>
        {ending.length === 0 ? (
          <p>
            No part has a last day to order. Enter it on the part’s page, under how it is bought, where a maker says
            that it will no longer be made.
          </p>
        ) : (
          <LastBuyTable rows={ending} today={today} />
        )}
      </section>
    </Page>
  );
}

function Basis() {
  return (
    <>
      <p>
        A part counts as dead where in 80 of 100 futures or more nobody asks for one within two years, and as too many
        where more lies there than 95 of 100 futures use in that time. Own choice, no source.
      </p>
      <p>
        Stock of an older number is named apart: payers refuse numbers that are superseded, so it is not counted for
        ordering its successor.
      </p>
    </>
  );
}
