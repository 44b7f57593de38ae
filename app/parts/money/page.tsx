import type { Metadata } from "next";
import Link from "next/link";
import { mayOpen } from "@/app/_people/may-open";
import { ButtonLink } from "@/app/_ui/button-link";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { formatCounted } from "@/lib/format/format-count";
import { formatDay } from "@/lib/format/format-day";
import { formatDecimal } from "@/lib/format/format-decimal";
import { FreshnessNotice } from "../_components/freshness-notice";
import { PartsTabs } from "../_components/parts-tabs";
import { settleState } from "../_work/settle-state";
import { answeredAfterDays, loadPartsMoney, type PartsMoney } from "./load-money";
import { ComponentTable, HeldTable, MonthTable, TiedUpTable } from "./money-tables";
import { moneyFinding, paidBackWords, wholeMoney } from "./money-words";

export const metadata: Metadata = { title: "Money in parts" };
export const dynamic = "force-dynamic";

export default async function PartsMoneyPage() {
  await mayOpen("/parts/money");
  const money = await readOnly(loadPartsMoney);
  const all = money.totals.find(({ key }) => key === "all")?.total;
  return (
    <Page
      title={moneyFinding(all, money.currency)}
      above={<Link href="/parts">Parts</Link>}
      margin={<Basis money={money} />}
      actions={
        all !== undefined && (
          <ButtonLink href="/parts/money/money.csv" isExport>
            {"CSV by month and component"}
          </ButtonLink>
        )
      }
    >
      <PartsTabs current="money" />
      <FreshnessNotice freshness={settleState(money.state, money.today)} forecastFrom={money.state.forecastFrom} />
      {all === undefined || money.state.forecastFrom === undefined ? (
        <EmptyState kind="never-used" title="No parts have been used yet">
          <p>
            They come with the part lines of closed jobs: <Link href="/files/new">load a file</Link>.
          </p>
        </EmptyState>
      ) : (
        <>
          <MonthTable total={all} forecastFrom={money.state.forecastFrom} currency={money.currency} />
          <section className="stack-tight">
            <h2>What warranty pays back</h2>
            {paidBackWords(money.weeks, all, money.currency).map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
            <p>
              <Link href="/claims/unclaimed">Covered work that nobody has claimed yet</Link>
            </p>
          </section>
          <Credits money={money} />
          <section className="stack-tight">
            <h2>Money tied up</h2>
            <TiedUpTable tiedUp={money.tiedUp} currency={money.currency} />
            <p>
              {wholeMoney(money.onTheWayCents, money.currency)} more is ordered and on the way.{" "}
              <Link href="/parts/idle">What of it is hardly asked for any more</Link>
            </p>
          </section>
          <ComponentTable totals={money.totals} currency={money.currency} />
        </>
      )}
    </Page>
  );
}

function Credits({ money: { credits, currency } }: { readonly money: PartsMoney }) {
  const { awaitedCents, claims, missing, missingCents, held } = credits;
  return (
    <section className="stack-tight">
      <h2>Part credits due</h2>
      <p>
        {claims === 0
          ? "No claim that was sent has parts that are not paid."
          : `${wholeMoney(awaitedCents, currency)} for parts on ${formatCounted(claims, "claim")} that ${claims === 1 ? "was" : "were"} sent and ${claims === 1 ? "is" : "are"} not paid in full.`}{" "}
        {missing > 0 &&
          `${formatCounted(missing, "credit")} for parts that went back never came: ${wholeMoney(missingCents, currency)}.`}
      </p>
      {held.length > 0 ? (
        <HeldTable held={held} currency={currency} />
      ) : (
        <p>No failed part has to be kept for a payer today.</p>
      )}
    </section>
  );
}

function Basis({ money: { shareFrom, shareUntil, totals } }: { readonly money: PartsMoney }) {
  const pace = totals.find(({ key }) => key === "all")?.total.paceVariance ?? 0;
  return (
    <>
      <p>
        Spend is what parts fitted on jobs will cost, at today’s cost of each, in 400 possible futures. Parts are added
        up future by future, so the range of a sum is that of its sums; parts of unknown cost are counted in pieces
        only.
      </p>
      {pace > 0 && (
        <p>
          Components had busy and quiet months together, more than chance explains: by{" "}
          {formatDecimal(100 * Math.sqrt(pace), 0)} in 100 up or down. All sums hold that.
        </p>
      )}
      <p>
        What warranty pays back is counted on jobs completed from {formatDay(shareFrom)} to {formatDay(shareUntil)}, so
        that payers have had {answeredAfterDays} days to answer. Its range is that of the spend and of the share, whose
        weeks are weighed anew in each of 2,000 futures.
      </p>
      <p>
        A failed part is kept until the payer releases it, or as long as the policy says. Scrapping it too early can
        void the credit.
      </p>
    </>
  );
}
