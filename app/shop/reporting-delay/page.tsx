import type { Metadata } from "next";
import Link from "next/link";
import { connection } from "next/server";
import { mayOpen } from "@/app/_people/may-open";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { Plate } from "@/app/_ui/plate";
import { readOnly } from "@/db/client";
import { formatCounted } from "@/lib/format/format-count";
import { DelayBasis } from "./_components/delay-basis";
import { DelayTable } from "./_components/delay-table";
import { LoadingDelay } from "./_components/loading-delay";
import { RecentWeeks } from "./_components/recent-weeks";
import { delayFinding } from "./delay-finding";
import { loadDelayView } from "./load-delay-view";

export const metadata: Metadata = { title: "How late jobs come in" };

const shop = <Link href="/shop">Shop</Link>;

export default async function ReportingDelayPage() {
  await mayOpen("/shop/reporting-delay");
  await connection();
  const view = await readOnly(loadDelayView);
  if (view === undefined) return <NoJobs />;
  const { openedToClosed, closedToLoaded } = view.delays;
  return (
    <Page title={delayFinding(view.delays)} above={shop} margin={<DelayBasis view={view} />}>
      <Plate title="The last weeks">
        <RecentWeeks view={view} />
      </Plate>
      {openedToClosed.kind === "learnt" && (
        <Plate title="From the call to closing">
          <DelayTable
            caption={`Share closed within so many days of the call, from ${formatCounted(openedToClosed.jobs, "job")}`}
            delay={openedToClosed.delay}
            level={view.level}
            done="Closed"
          />
        </Plate>
      )}
      <Plate title="From closing to the load">
        <LoadingDelay loading={closedToLoaded} level={view.level} />
      </Plate>
    </Page>
  );
}

function NoJobs() {
  return (
    <Page title="No job is closed yet" above={shop} margin={<p>Delays are learnt from closed jobs.</p>}>
      <EmptyState kind="never-used" title="Nothing to learn from">
        <p>
          <Link href="/files/new">Load closed jobs</Link> with the day of the customer’s call and the day of completion.
        </p>
      </EmptyState>
    </Page>
  );
}
