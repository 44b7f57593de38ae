import type { Metadata } from "next";
import type { AddressValues } from "@/app/_address/address-reader";
import { mayOpen } from "@/app/_people/may-open";
import { EmptyState } from "@/app/_ui/empty-state";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { readDay } from "@/lib/calendar/day";
import { AnyQuestion } from "./_components/any-question";
import { RateBasis } from "./_components/rate-basis";
import { keptViews } from "./kept-views";
import { ratesFinding } from "./rate-wording";
import { Bias } from "./signals/bias";
import { currentRun } from "./signals/current-run";
import { signalsFinding } from "./signals/signals-finding";
import { WorthALook } from "./signals/worth-a-look";

export const metadata: Metadata = { title: "Repeats" };
export const dynamic = "force-dynamic";

const noDay = "“as” is not a day such as 2026-03-31; the list stands as of now.";

interface Props {
  readonly searchParams: Promise<AddressValues>;
}

export default async function RepeatsPage({ searchParams }: Props) {
  await mayOpen("/repeats");
  const { as, ...values } = await searchParams;
  const asked = typeof as === "string" && as !== "" ? readDay(as) : undefined;
  const current = await currentRun(asked);
  const view = await keptViews.rates(values);
  if (view.kind === "no-data" || view.words.cutOff === undefined) return <NoData />;
  const notices = [...view.address.notices, ...(as !== undefined && as !== "" && asked === undefined ? [noDay] : [])];
  // An address that asks something of the free table opens with its answer; a day asks for the list as it stood then.
  const opensWithTable = as === undefined && Object.keys(values).length > 0;
  const table = <AnyQuestion view={view} cutOff={view.words.cutOff} opensPage={opensWithTable} />;
  return (
    <Page
      title={opensWithTable ? ratesFinding(view.rates) : signalsFinding(current)}
      margin={
        <>
          <RateBasis rates={view.rates} />
          <Bias />
        </>
      }
      wide
    >
      {notices.length > 0 && (
        <Notice status="note" title="Part of the address was left out">
          {notices.map((notice) => (
            <p key={notice}>{notice}</p>
          ))}
        </Notice>
      )}
      {opensWithTable && table}
      <WorthALook current={current} />
      {!opensWithTable && table}
    </Page>
  );
}

function NoData() {
  return (
    <Page
      title="No jobs to count yet"
      margin={<p>Rates need closed jobs and the units in service that they are divided by.</p>}
    >
      <EmptyState kind="never-used" title="Nothing has been loaded">
        <p>
          <a href="/files/new">Load the units in service and the closed jobs</a>. Without units there are counts but no
          rates.
        </p>
      </EmptyState>
    </Page>
  );
}
