import type { Metadata } from "next";
import Link from "next/link";
import { todayIn } from "@/app/_clock/today";
import { mayOpen } from "@/app/_people/may-open";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { type DisputedLine, loadDisputedLines } from "@/db/queries/money-disputes";
import { loadShop } from "@/db/queries/shop";
import type { Currency } from "@/lib/domain/money";
import { formatCounted } from "@/lib/format/format-count";
import { formatMoney } from "@/lib/format/format-money";
import { DisputeTable } from "./dispute-table";

export const metadata: Metadata = { title: "To dispute" };
export const dynamic = "force-dynamic";

export default async function DisputesPage() {
  await mayOpen("/claims/disputes");
  const { lines, today } = await readOnly(async (db) => {
    const today = todayIn((await loadShop(db)).timeZone);
    return { today, lines: await loadDisputedLines(db, today) };
  });
  return (
    <Page title={findingOf(lines)} above={<Link href="/claims">Claims</Link>} margin={<Basis />} wide>
      {lines.length === 0 ? (
        <EmptyState kind="nothing-due" title="No payer has kept anything that nobody disputes" />
      ) : (
        <DisputeTable lines={lines} today={today} />
      )}
    </Page>
  );
}

function findingOf(lines: readonly DisputedLine[]): string {
  if (lines.length === 0) return "No line was paid short";
  const sums = new Map<Currency, number>();
  for (const { askedCents, grantedCents, currency } of lines)
    sums.set(currency, (sums.get(currency) ?? 0) + askedCents - grantedCents);
  const money = [...sums].map(([currency, cents]) => formatMoney({ cents, currency })).join(" and ");
  const claims = new Set(lines.map(({ claimNumber }) => claimNumber)).size;
  return `Payers kept ${money} of ${formatCounted(lines.length, "line")} in ${formatCounted(claims, "claim")}`;
}

function Basis() {
  return (
    <>
      <p>
        Lines of claims that were paid short, cut in an approval, or taken back, and that nobody has appealed or given
        up. Each line is compared by itself: a total can agree where two lines do not.
      </p>
      <p>
        The payer’s words stand as it wrote them. Our reason is what somebody said those words mean, else what was
        entered with the answer.
      </p>
      <p>
        The last day is taken as the policy’s time for resubmission, counted from the answer: common practice, no
        source. The payer’s agreement decides.
      </p>
    </>
  );
}
