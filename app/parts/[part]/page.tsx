import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import type { AddressValues } from "@/app/_address/address-reader";
import { mayOpen } from "@/app/_people/may-open";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { partLine } from "@/lib/stock/part-line";
import { readDone } from "../_components/done-words";
import { FreshnessNotice } from "../_components/freshness-notice";
import { PartsTabs } from "../_components/parts-tabs";
import { settleState } from "../_work/settle-state";
import { partHref } from "../read-parts-address";
import { BackTestTable } from "./_components/back-test-table";
import { DemandFan } from "./_components/demand-fan";
import { OrderPanel } from "./_components/order-panel";
import { PartBasis } from "./_components/part-basis";
import { PartDrivers } from "./_components/part-drivers";
import { StockLedger } from "./_components/stock-ledger";
import { type KnownPart, loadPart } from "./load-part";
import { hasFan, partFinding, partNotes } from "./part-words";

export const metadata: Metadata = { title: "Part" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly part: string }>;
  readonly searchParams: Promise<AddressValues>;
}

export default async function PartPage({ params, searchParams }: Props) {
  await mayOpen("/parts/[part]");
  const { part: asked } = await params;
  const { done } = await searchParams;
  const view = await readOnly((db) => loadPart(db, decodeURIComponent(asked)));
  if (view.kind === "unknown") notFound();
  const back = <Link href="/parts">Parts</Link>;
  if (view.kind === "superseded")
    return (
      <Page
        above={back}
        title={`${view.partNumber} was superseded by ${view.by}`}
        margin={<p>The catalogue of parts says which number took the place of which.</p>}
      >
        <p>
          Its use is counted, and what is expected is shown, under <Link href={partHref(view.byKey)}>{view.by}</Link>.
        </p>
      </Page>
    );
  return <OnePart view={view} done={readDone(done)} />;
}

function OnePart({ view, done }: { readonly view: KnownPart; readonly done: string | undefined }) {
  const { part, state, today } = view;
  const line = partLine(part.plan, part);
  return (
    <Page above={<Link href="/parts">Parts</Link>} title={partFinding(part)} margin={<PartBasis view={view} />}>
      <PartsTabs current={undefined} />
      {done !== undefined && <Notice status="fine" title={done} />}
      <FreshnessNotice freshness={settleState(state, today)} forecastFrom={state.forecastFrom} />
      {line.kind === "negative-stock" && (
        <Notice status="act-now" title={`The ledger has ${part.onHand} on hand`}>
          <p>
            Jobs used more than was ever entered, so a delivery or a count is missing. Until somebody counts, it is
            taken as none: <Link href={`${partHref(part.partKey)}/stock`}>count it now</Link>.
          </p>
        </Notice>
      )}
      <OrderPanel part={part} line={line} />
      {hasFan(part) && <DemandFan part={part} csvHref={`${partHref(part.partKey)}/months.csv`} />}
      {partNotes(part).map((note) => (
        <p key={note}>{note}</p>
      ))}
      <PartDrivers view={view} />
      <BackTestTable outlook={part.outlook} />
      <StockLedger part={part} />
    </Page>
  );
}
