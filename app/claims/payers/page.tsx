import type { Metadata } from "next";
import Link from "next/link";
import { todayIn } from "@/app/_clock/today";
import { mayOpen } from "@/app/_people/may-open";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadPayFacts } from "@/db/queries/money-pay";
import { loadMoneyFacts, type MoneyFacts } from "@/db/queries/money-recovery";
import { loadShop } from "@/db/queries/shop";
import { addMonths } from "@/lib/calendar/day";
import { type PayerRecovery, payerRecovery } from "@/lib/claims/recovery/payer-recovery";
import { formatCounted } from "@/lib/format/format-count";
import { formatMoney } from "@/lib/format/format-money";
import { AgeingTable } from "./_components/ageing-table";
import { PayTable } from "./_components/pay-table";
import { ReasonTable } from "./_components/reason-table";
import { RecoveryTable } from "./_components/recovery-table";
import { daysToPayment } from "./days-to-payment";

export const metadata: Metadata = { title: "Payers" };
export const dynamic = "force-dynamic";

const level = 0.95;
/** Prices of older work say little of what the same work would earn now. Own choice, no source. */
const payYears = 2;

export default async function PayersPage() {
  await mayOpen("/claims/payers");
  const { facts, pay, today } = await readOnly(async (db) => {
    const today = todayIn((await loadShop(db)).timeZone);
    const pay = await loadPayFacts(db, addMonths(today, -12 * payYears));
    return { today, pay, facts: await loadMoneyFacts(db, today) };
  });
  const recovered = payerRecovery(facts.claims);
  const waits = new Map(
    recovered.map(({ payer }) => [
      payer,
      daysToPayment(
        facts.claims.filter((claim) => claim.payer === payer),
        today,
        level,
      ),
    ]),
  );
  return (
    <Page title={findingOf(recovered)} above={<Link href="/claims">Claims</Link>} margin={<Basis facts={facts} />} wide>
      {recovered.length === 0 ? (
        <EmptyState kind="never-used" title="No claim has been sent yet">
          <p>
            <Link href="/claims/unclaimed">Covered work that is not claimed yet</Link>
          </p>
        </EmptyState>
      ) : (
        <RecoveryTable rows={recovered} waits={waits} level={level} />
      )}
      <AgeingTable aged={facts.aged} today={today} />
      <PayTable facts={pay} years={payYears} />
      {facts.reasons.length > 0 && <ReasonTable reasons={facts.reasons} level={level} />}
    </Page>
  );
}

function findingOf(rows: readonly PayerRecovery[]): string {
  const [first] = rows;
  if (first === undefined) return "No payer owes anything: nothing was sent";
  const same = rows.filter(({ currency }) => currency === first.currency);
  const sum = (of: (row: PayerRecovery) => number) =>
    formatMoney({ cents: same.reduce((all, row) => all + of(row), 0), currency: first.currency });
  return `${sum((row) => row.openCents)} of claims is open; ${sum((row) => row.keptCents)} of ${sum((row) => row.askedCents)} asked has been paid`;
}

function Basis({ facts }: { readonly facts: MoneyFacts }) {
  return (
    <>
      <p>{formatCounted(facts.claims.length, "claim")} that were sent, over the whole history.</p>
      <p>
        Accepted at first: the payer’s first answer was the whole sum of the first filing. The range is Wilson’s, 95 %.
        If we could rerun this many times, ranges built this way would hold the true share 95 times in 100.
      </p>
      <p>
        Days to payment: the median from first sending to first payment by Kaplan and Meier, since claims that are not
        paid yet are still waiting and must not be left out.
      </p>
      <p>
        Pay against retail: medians of labour and trip together, for repairs of the same component of the same product
        type. A payer’s are what its terms pay, claimed or not; customers’ are what jobs that they paid were charged.
        Parts are left out: a payer gives invoice cost plus handling, and what a part earns at retail is not on file.
        Each range is the one of order statistics at 97.5 %, so both hold at once 95 times in 100, and so does the
        ratio. The jobs are not otherwise alike: distance, access and what else was found may differ.
      </p>
      <p>Reasons: shares of all refusals and cuts, with ranges by Goodman that hold together.</p>
      <p>
        Ages are days since completion, since sending, and since the answer. The buckets are common practice, no source.
      </p>
    </>
  );
}
