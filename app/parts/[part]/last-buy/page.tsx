import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { TwentyFutures } from "@/app/_charts/twenty-futures";
import { mayOpen } from "@/app/_people/may-open";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { run } from "@/lib/format/describe-need";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { formatDecimal } from "@/lib/format/format-decimal";
import { formatMoney } from "@/lib/format/format-money";
import { formatShare } from "@/lib/format/format-share";
import { twentyFutures } from "@/lib/stock/twenty-futures";
import { partHref } from "../../read-parts-address";
import { type KnownPart, loadPart } from "../load-part";
import { type LastBuy, loadLastBuy } from "./load-last-buy";

export const metadata: Metadata = { title: "Last buy" };
export const dynamic = "force-dynamic";

export default async function LastBuyPage({ params }: { readonly params: Promise<{ readonly part: string }> }) {
  await mayOpen("/parts/[part]/last-buy");
  const { part: asked } = await params;
  const found = await readOnly(async (db) => {
    const view = await loadPart(db, decodeURIComponent(asked));
    return view.kind === "part" ? { view, last: await loadLastBuy(db, view) } : undefined;
  });
  if (found === undefined) notFound();
  const { view, last } = found;
  const name = view.part.description || view.part.partNumber;
  const above = <Link href={partHref(view.part.partKey)}>{view.part.partNumber}</Link>;
  if (last.kind !== "last-buy")
    return (
      <Page above={above} title={`${name}: how many to the end cannot be told`} margin={<Basis />}>
        <EmptyState kind="filtered-away" title={whyNot(last)}>
          <p>
            What the next two years need stands on <Link href={partHref(view.part.partKey)}>the part’s page</Link>.
          </p>
        </EmptyState>
      </Page>
    );
  return <Answer view={view} last={last} above={above} />;
}

interface AnswerProps {
  readonly view: KnownPart;
  readonly last: Extract<LastBuy, { kind: "last-buy" }>;
  readonly above: React.ReactNode;
}

function Answer({ view: { part }, last, above }: AnswerProps) {
  const { buy, end, failures, retired, running, use, maker } = last;
  const { shortOneIn, pack } = part.plan;
  const have = Math.max(0, part.onHand ?? 0) + part.onOrder;
  const years = end.medianMonths === undefined ? undefined : Math.round(end.medianMonths / 12);
  return (
    <Page
      above={above}
      title={`${part.description || part.partNumber}: buy ${formatCount(buy.pieces)} to last to the end of the fleet’s life in ${formatShare(1 - 1 / shortOneIn, 0)} of 100 futures`}
      margin={<Basis />}
    >
      <p>
        Needed until the last unit has left: 9 times in 10 between {run(buy.low, buy.high).replace(" to ", " and ")}{" "}
        pieces. {formatCount(have)} are there or on order, so with {formatCount(buy.pieces)} more it lasts in{" "}
        {formatShare(buy.lasts, 0)} of 100 futures.
        {part.unitCostCents !== undefined &&
          ` They cost ${formatMoney({ cents: buy.cents, currency: part.currency })} today.`}
        {pack > 1 && ` Packs hold ${formatCount(pack)}.`}
      </p>
      <figure className="stack-tight">
        <figcaption>Needed to the end, in twenty futures of equal chance</figcaption>
        <TwentyFutures twenty={twentyFutures(end.demand)} stock={have + buy.pieces} />
      </figure>
      <p>
        On average {formatDecimal(buy.expectedLeftover, 0)} would be left over, and{" "}
        {formatDecimal(buy.expectedShort, 0)} be short.
      </p>
      <section className="stack-tight">
        <h2>What that rests on</h2>
        <p>
          {formatCounted(running, "component")} run today{maker === undefined ? "" : ` in machines of ${maker}`}. How
          long they last is known from {formatCounted(failures, "failure")} (
          <Link href={`/repeats/${part.component}`}>when it fails</Link>), how long machines stay from{" "}
          {formatCount(retired)} that left. In half of the futures{" "}
          {years === undefined
            ? `some are still there after ${end.longestMonths / 12} years, where the count stops.`
            : `the last has left within ${formatCounted(years, "year")}.`}
        </p>
        <p>
          {formatCounted(use.failures, "failure")} of it in the last two years, and {formatCounted(use.took, "job")}{" "}
          that took this part{last.pieces > 1.005 ? `, ${formatDecimal(last.pieces, 2)} pieces each` : ""}.
        </p>
      </section>
    </Page>
  );
}

function whyNot(last: Exclude<LastBuy, { kind: "last-buy" }>): string {
  switch (last.kind) {
    case "no-component":
      return "No component is on file for this part, so the fleet that carries it is not known.";
    case "no-repairs":
      return "No repair of the last two years took it, so how often it is needed is not known.";
    case "no-machines":
      return "No machine in service is on the register that carries its component.";
    case "too-few-failures":
      return `${formatCounted(last.failures, "failure")} of its component ${last.failures === 1 ? "is" : "are"} on record; from ${last.needed} on it can be told how long it lasts.`;
  }
}

function Basis() {
  return (
    <>
      <p>
        Today’s machines are let age, fail, be repaired and leave in 200 futures, each with a life of the component and
        a life of the machines that may be the true ones; nothing new is installed. That the range is wide is no
        mistake: nobody knows how long machines stay.
      </p>
      <p>Only units on the register count. A later number that fits as well would need fewer.</p>
    </>
  );
}
