import { randomUUID } from "node:crypto";
import type { Metadata } from "next";
import Link from "next/link";
import type { AddressValues } from "@/app/_address/address-reader";
import { mayOpen } from "@/app/_people/may-open";
import { ButtonLink } from "@/app/_ui/button-link";
import { EmptyState } from "@/app/_ui/empty-state";
import { Field } from "@/app/_ui/field";
import { ListPages } from "@/app/_ui/list-pages";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { SelectField } from "@/app/_ui/select-field";
import { readOnly } from "@/db/client";
import { sendingWayKeys, sendingWays } from "@/lib/claims/life/sending-way";
import { formatCounted } from "@/lib/format/format-count";
import { formatMoney } from "@/lib/format/format-money";
import { Basis } from "./_components/basis";
import { ClaimTable } from "./_components/claim-table";
import { ClaimTabs, tabNames } from "./_components/claim-tabs";
import { ClaimableTable } from "./_components/claimable-table";
import { ClaimsFilter } from "./_components/claims-filter";
import { ManyForm } from "./_components/many-form";
import { PacketsOfChosen } from "./_components/packets-of-chosen";
import { type ClaimsView, loadClaimsView } from "./load-claims-page";
import { makeDrafts, markSent } from "./many-actions";
import { type ClaimsAddress, claimsHref, readClaimsAddress } from "./read-claims-address";

export const metadata: Metadata = { title: "Claims" };
export const dynamic = "force-dynamic";

interface Props {
  readonly searchParams: Promise<AddressValues>;
}

export default async function ClaimsPage({ searchParams }: Props) {
  await mayOpen("/claims");
  const address = readClaimsAddress(await searchParams);
  const view = await readOnly((db) => loadClaimsView(db, address), { timeoutSeconds: 30 });
  return (
    <Page title={findingOf(view)} margin={<Basis />} actions={<Ways />} wide>
      <ClaimTabs current={address.tab} counts={view.counts} />
      {address.notices.map((notice) => (
        <Notice key={notice} status="note" title={notice} />
      ))}
      <ClaimsFilter address={address} payers={view.payers} shown={view.fitting} />
      <List address={address} view={view} />
      <ListPages page={view.page} pages={view.pages} hrefOf={(page) => claimsHref({ ...address, page })} />
    </Page>
  );
}

/** The other places of claims: the whole history, payers' lists, and what came of it all. */
function Ways() {
  return (
    <>
      <ButtonLink href="/claims/unclaimed">Missed in the whole history</ButtonLink>
      <ButtonLink href="/claims/answers">Answers</ButtonLink>
      <ButtonLink href="/claims/disputes">To dispute</ButtonLink>
      <ButtonLink href="/claims/payers">Payers</ButtonLink>
      <ButtonLink href="/claims/failed-parts">Failed parts</ButtonLink>
    </>
  );
}

function List({ address, view }: { readonly address: ClaimsAddress; readonly view: ClaimsView }) {
  const { tab } = address;
  const { today, claims, claimable } = view;
  if (tab === "unclaimed") {
    if (claimable.length === 0) return <Nothing address={address} view={view} />;
    return (
      <>
        <p>
          These can still be filed. <Link href="/claims/unclaimed">Everything that was never asked or never paid</Link>{" "}
          is listed by how it was lost.
        </p>
        <ManyForm act={makeDrafts} button="Make drafts of the chosen" formKey={randomUUID()}>
          <ClaimableTable rows={claimable} today={today} />
        </ManyForm>
      </>
    );
  }
  if (claims.length === 0) return <Nothing address={address} view={view} />;
  const table = (
    <ClaimTable address={address} rows={claims} fitting={view.fitting} today={today} choosable={tab === "drafts"} />
  );
  if (tab !== "drafts") return table;
  const ways = sendingWayKeys.map((key) => ({ value: key, name: sendingWays[key] }));
  const fields = (
    <div className="cluster">
      <Field label="Day of sending" name="on" type="date" width="short" value={today} />
      <SelectField label="Sent by" name="way" choices={ways} />
    </div>
  );
  return (
    <ManyForm
      act={markSent}
      button="Mark the chosen as sent"
      formKey={randomUUID()}
      fields={fields}
      others={<PacketsOfChosen />}
    >
      {table}
    </ManyForm>
  );
}

/** A filter that took everything away, a list that never had anything, and work that is done are three pieces of news. */
function Nothing({ address: { tab }, view }: { readonly address: ClaimsAddress; readonly view: ClaimsView }) {
  if ((view.counts.get(tab) ?? 0) > 0)
    return (
      <EmptyState kind="filtered-away" title={`No claim under “${tabNames[tab]}” fits the filter`}>
        <p>{formatCounted(view.counts.get(tab) ?? 0, "row")} without it.</p>
      </EmptyState>
    );
  if (tab === "unclaimed") return <EmptyState kind="nothing-due" title="No covered job is waiting to be claimed" />;
  return (
    <EmptyState kind="nothing-due" title={nothing[tab]}>
      {view.allClaimable.cases > 0 && (
        <p>{formatCounted(view.allClaimable.cases, "closed job")} can still be claimed.</p>
      )}
    </EmptyState>
  );
}

const nothing: Readonly<Record<Exclude<ClaimsAddress["tab"], "unclaimed">, string>> = {
  drafts: "No claim is being built",
  sent: "No claim is on its way",
  answered: "No answer waits for a correction",
  "short-paid": "No claim was paid short",
  settled: "No claim is settled yet",
};

function findingOf({ allClaimable, counts }: ClaimsView): string {
  const needsUs = (counts.get("answered") ?? 0) + (counts.get("short-paid") ?? 0);
  const also =
    needsUs === 0 ? "" : `; ${formatCounted(needsUs, "claim")} ${needsUs === 1 ? "needs" : "need"} an answer from us`;
  if (allClaimable.cases === 0) return `Nothing is waiting to be claimed${also}`;
  const sums = allClaimable.sums.map(formatMoney).join(" and ");
  return `${sums} of covered work is not claimed yet, in ${formatCounted(allClaimable.cases, "case")}${also}`;
}
