import type { Metadata } from "next";
import Link from "next/link";
import { todayIn } from "@/app/_clock/today";
import { ButtonLink } from "@/app/_ui/button-link";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { type HeldPart, listedDays, loadHeldParts } from "@/db/queries/held-parts";
import { loadShop } from "@/db/queries/shop";
import { formatCounted } from "@/lib/format/format-count";
import { PartsTable } from "./_components/parts-table";

export const metadata: Metadata = { title: "Failed parts" };
export const dynamic = "force-dynamic";

export default async function FailedPartsPage() {
  const { parts, today } = await readOnly(async (db) => {
    const today = todayIn((await loadShop(db)).timeZone);
    return { today, parts: await loadHeldParts(db, today) };
  });
  const kept = parts.filter(({ hold }) => hold.kind !== "may go");
  const free = parts.filter(({ hold }) => hold.kind === "may go");
  return (
    <Page
      title={findingOf(kept, free)}
      above={<Link href="/claims">Claims</Link>}
      margin={<Basis />}
      actions={kept.length > 0 && <ButtonLink href="/claims/failed-parts/tags">Tags to print</ButtonLink>}
      wide
    >
      {parts.length === 0 ? (
        <EmptyState kind="nothing-due" title="No payer holds a failed part" />
      ) : (
        <>
          <PartsTable caption="To keep" head="Keep until" parts={kept} today={today} />
          <PartsTable caption="May go" head="May go" parts={free} today={today} />
        </>
      )}
    </Page>
  );
}

function findingOf(kept: readonly HeldPart[], free: readonly HeldPart[]): string {
  const go = free.length === 0 ? "" : `; ${formatCounted(free.length, "part")} may go`;
  return kept.length === 0
    ? `No failed part has to be kept${go}`
    : `${formatCounted(kept.length, "failed part")} must be kept for ${kept.length === 1 ? "its payer" : "payers"}${go}`;
}

function Basis() {
  return (
    <>
      <p>
        Parts of claims that were sent. The last day is the payer’s own clock in its terms, counted from the filing or
        from the payment; while an audit is open, its parts stay whatever the clock says.
      </p>
      <p>A part that is scrapped too early, or sent back late, can cost the whole claim.</p>
      <p>Parts that may go are listed for {listedDays} days. Whether one was scrapped is not recorded here.</p>
    </>
  );
}
