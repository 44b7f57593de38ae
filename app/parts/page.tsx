import type { Metadata } from "next";
import Link from "next/link";
import type { AddressValues } from "@/app/_address/address-reader";
import { todayIn } from "@/app/_clock/today";
import { mayOpen } from "@/app/_people/may-open";
import { ButtonLink } from "@/app/_ui/button-link";
import { EmptyState } from "@/app/_ui/empty-state";
import { ListPages } from "@/app/_ui/list-pages";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadOutlookState, loadPartList } from "@/db/queries/part-list";
import { loadShop } from "@/db/queries/shop";
import { formatCounted } from "@/lib/format/format-count";
import { Basis } from "./_components/basis";
import { FreshnessNotice } from "./_components/freshness-notice";
import { PartTable } from "./_components/part-table";
import { PartsFilter } from "./_components/parts-filter";
import { PartsTabs } from "./_components/parts-tabs";
import { settleState } from "./_work/settle-state";
import { filteredRows, partRows, partsFinding } from "./parts-view";
import { partsHref, readPartsAddress } from "./read-parts-address";

export const metadata: Metadata = { title: "Parts" };
export const dynamic = "force-dynamic";

const rowsOnPage = 50;

interface Props {
  readonly searchParams: Promise<AddressValues>;
}

export default async function PartsPage({ searchParams }: Props) {
  await mayOpen("/parts");
  const address = readPartsAddress(await searchParams);
  const { state, parts, today } = await readOnly(async (db) => ({
    today: todayIn((await loadShop(db)).timeZone),
    state: await loadOutlookState(db),
    parts: await loadPartList(db),
  }));
  const freshness = settleState(state, today);
  const rows = partRows(parts);
  const shown = filteredRows(rows, address.filter);
  const onPage = shown.slice((address.page - 1) * rowsOnPage, address.page * rowsOnPage);
  const csv = partsHref(address.inForce, 1, "/parts/parts.csv");
  return (
    <Page
      title={partsFinding(rows)}
      margin={<Basis {...state} />}
      actions={
        shown.length > 0 && (
          <ButtonLink href={csv} isExport>{`CSV of ${formatCounted(shown.length, "part")}`}</ButtonLink>
        )
      }
      wide
    >
      <PartsTabs current="parts" />
      {address.notices.map((notice) => (
        <Notice key={notice} status="note" title={notice} />
      ))}
      <FreshnessNotice freshness={freshness} forecastFrom={state.forecastFrom} />
      {rows.length === 0 ? (
        <EmptyState kind="never-used" title="No parts have been used yet">
          <p>
            They come with the part lines of closed jobs: <Link href="/files/new">load a file</Link>.
          </p>
        </EmptyState>
      ) : (
        <>
          <PartsFilter address={address} rows={rows} shown={shown.length} />
          {onPage.length === 0 ? (
            <EmptyState kind="filtered-away" title="No part fits this filter">
              <p>
                <Link href="/parts">Show all parts</Link>
              </p>
            </EmptyState>
          ) : (
            <PartTable caption="Parts, those to be ordered first" rows={onPage} />
          )}
          <ListPages
            page={address.page}
            pages={Math.ceil(shown.length / rowsOnPage)}
            hrefOf={(page) => partsHref(address.inForce, page)}
          />
        </>
      )}
    </Page>
  );
}
