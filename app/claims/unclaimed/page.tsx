import { randomUUID } from "node:crypto";
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
import { loadUnclaimedFacts, loadUnclaimedList } from "@/db/queries/money-unclaimed";
import { loadShop } from "@/db/queries/shop";
import { formatCounted } from "@/lib/format/format-count";
import { ManyForm } from "../_components/many-form";
import { makeDrafts } from "../many-actions";
import { Basis } from "./_components/basis";
import { LeakTotals } from "./_components/leak-totals";
import { UnclaimedFilterForm } from "./_components/unclaimed-filter-form";
import { UnclaimedTable } from "./_components/unclaimed-table";
import { readUnclaimedAddress, unclaimedHref } from "./read-unclaimed-address";
import { unclaimedFinding } from "./unclaimed-finding";

export const metadata: Metadata = { title: "Not claimed yet" };
export const dynamic = "force-dynamic";

const rowsOnPage = 50;

interface Props {
  readonly searchParams: Promise<AddressValues>;
}

export default async function UnclaimedPage({ searchParams }: Props) {
  await mayOpen("/claims/unclaimed");
  const address = readUnclaimedAddress(await searchParams);
  const { filter, page, inForce } = address;
  const { facts, list, today } = await readOnly(async (db) => {
    const today = todayIn((await loadShop(db)).timeZone);
    const span = { offset: (page - 1) * rowsOnPage, limit: rowsOnPage };
    return {
      today,
      facts: await loadUnclaimedFacts(db, today),
      list: await loadUnclaimedList(db, filter, today, span),
    };
  });
  const csv = unclaimedHref(inForce, {}, "/claims/unclaimed/unclaimed.csv");
  return (
    <Page
      title={unclaimedFinding(facts.totals)}
      above={<Link href="/claims">Claims</Link>}
      margin={<Basis />}
      actions={
        list.total > 0 && <ButtonLink href={csv} isExport>{`CSV of ${formatCounted(list.total, "row")}`}</ButtonLink>
      }
      wide
    >
      {address.notices.map((notice) => (
        <Notice key={notice} status="note" title={notice} />
      ))}
      {facts.unitsToJudge !== 0 && <Notice status="note" title={stillJudged(facts.unitsToJudge)} />}
      {facts.totals.length > 0 && <LeakTotals totals={facts.totals} inForce={inForce} />}
      <UnclaimedFilterForm address={address} facts={facts} total={list.total} />
      {list.rows.length > 0 ? (
        <ManyForm act={makeDrafts} button="Make drafts of the chosen" formKey={randomUUID()}>
          <UnclaimedTable rows={list.rows} today={today} />
        </ManyForm>
      ) : (
        <Nothing isFiltered={inForce.length > 0} />
      )}
      <ListPages
        page={page}
        pages={Math.ceil(list.total / rowsOnPage)}
        hrefOf={(to) => unclaimedHref(inForce, { page: to === 1 ? undefined : String(to) })}
      />
    </Page>
  );
}

function stillJudged(units: number | "all"): string {
  if (units === "all") return "Terms have changed, and every job is still being judged by them";
  return `${formatCounted(units, "unit")} changed in a load and ${units === 1 ? "is" : "are"} still being judged`;
}

function Nothing({ isFiltered }: { readonly isFiltered: boolean }) {
  if (!isFiltered) return <EmptyState kind="nothing-due" title="No covered work is without its claim or its pay" />;
  return (
    <EmptyState kind="filtered-away" title="No work fits this filter">
      <p>
        <Link href="/claims/unclaimed">Show all of it</Link>
      </p>
    </EmptyState>
  );
}
