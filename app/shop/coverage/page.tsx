import type { Metadata } from "next";
import Link from "next/link";
import { connection } from "next/server";
import { todayIn } from "@/app/_clock/today";
import { mayOpen } from "@/app/_people/may-open";
import { Button } from "@/app/_ui/button";
import { ButtonLink } from "@/app/_ui/button-link";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { type Column, Table } from "@/app/_ui/table";
import { readOnly } from "@/db/client";
import {
  loadPolicyDrafts,
  loadPolicyVersions,
  type PolicyDraft,
  type PolicyVersion,
} from "@/db/queries/policy-versions";
import { loadShop } from "@/db/queries/shop";
import type { Day } from "@/lib/calendar/day";
import { instantOnClock } from "@/lib/calendar/instant";
import { formatCounted } from "@/lib/format/format-count";
import { startVersion } from "./actions";
import { salesWords, stateWords, versionPath } from "./version-state";

export const metadata: Metadata = { title: "Coverage" };

export default async function CoveragePage() {
  await mayOpen("/shop/coverage");
  await connection();
  const { versions, drafts, shop } = await readOnly(async (db) => ({
    versions: await loadPolicyVersions(db),
    drafts: await loadPolicyDrafts(db),
    shop: await loadShop(db),
  }));
  const today = todayIn(shop.timeZone);
  const payers = [...new Set(versions.map(({ policy }) => policy.payer.name))].sort();
  const standing = versions.filter(({ retired }) => retired === undefined).length;
  return (
    <Page
      above={<Link href="/shop">Shop</Link>}
      title={
        versions.length === 0
          ? "No policy is on file"
          : `${formatCounted(standing, "version")} of ${formatCounted(new Set(versions.map(({ policy }) => policy.key)).size, "policy", "policies")} decide who pays`
      }
      margin={<Basis />}
      actions={
        <>
          <form action={startVersion}>
            <Button>New policy</Button>
          </form>
          <ButtonLink href="/files/new">Load policies as JSON</ButtonLink>
        </>
      }
    >
      {drafts.length > 0 && <Drafts drafts={drafts} timeZone={shop.timeZone} />}
      {versions.length === 0 ? (
        <EmptyState kind="never-used" title="Nothing can be claimed yet">
          <p>Write the terms of a maker or a contract as a new policy, or load them as JSON.</p>
        </EmptyState>
      ) : (
        payers.map((payer) => (
          <Table
            key={payer}
            caption={payer}
            columns={columnsFor(today)}
            rows={versions.filter(({ policy }) => policy.payer.name === payer)}
            rowKey={({ policyId }) => String(policyId)}
          />
        ))
      )}
    </Page>
  );
}

function columnsFor(today: Day): readonly Column<PolicyVersion>[] {
  return [
    {
      key: "policy",
      head: "Policy",
      cell: ({ policy }) => (
        <Link href={versionPath(policy)}>
          {policy.name}, version {policy.version}
        </Link>
      ),
    },
    { key: "sales", head: "Units sold", cell: salesWords },
    { key: "state", head: "State", cell: (version) => stateWords(version, today) },
    { key: "source", head: "Document", wideOnly: true, cell: ({ policy }) => policy.sourceDocument },
    { key: "approved", head: "Approved by", wideOnly: true, cell: ({ policy }) => policy.approvedBy },
  ];
}

const draftColumns = (timeZone: string): readonly Column<PolicyDraft>[] => [
  {
    key: "draft",
    head: "Draft",
    cell: ({ draftId, document }) => (
      <Link href={`/shop/coverage/draft/${draftId}`}>
        {typeof document.name === "string" ? document.name : "A policy without a name yet"}
      </Link>
    ),
  },
  { key: "saved", head: "Saved", cell: ({ savedAt }) => instantOnClock(savedAt, timeZone) },
];

interface DraftsProps {
  readonly drafts: readonly PolicyDraft[];
  readonly timeZone: string;
}

function Drafts({ drafts, timeZone }: DraftsProps) {
  return (
    <Table
      caption="Being written; nothing is decided by these"
      columns={draftColumns(timeZone)}
      rows={drafts}
      rowKey={({ draftId }) => String(draftId)}
    />
  );
}

function Basis() {
  return (
    <>
      <p>
        A version governs the units that were sold on its days. It is never edited: a change is a new version, and a
        claim keeps the version that decided it.
      </p>
      <p>
        The wording of the terms and local law decide; what stands here is how they were read. This is no legal advice.
      </p>
    </>
  );
}
