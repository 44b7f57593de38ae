import type { Metadata } from "next";
import { connection } from "next/server";
import { loadHealth } from "@/app/_health/load-health";
import { mayOpen } from "@/app/_people/may-open";
import { DefinitionList } from "@/app/_ui/definition-list";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { Plate } from "@/app/_ui/plate";
import { BackupNotice } from "./backup-notice";
import { groundFacts, signalFacts } from "./health-facts";
import { NightlyChecks } from "./nightly-checks";

export const metadata: Metadata = { title: "Health" };

export default async function HealthPage() {
  await mayOpen("/shop/health");
  await connection();
  const health = await loadHealth();
  const well = Object.values(health.readiness).every(Boolean);
  return (
    <Page
      title={well ? "The site can do its work" : "The site cannot do all of its work"}
      margin={
        <p>
          Programs that watch over this one ask <code>/healthz</code>, which says that it is alive, and{" "}
          <code>/readyz</code>, which says whether it can do its work.
        </p>
      }
    >
      {health.stored === undefined ? (
        <Notice status="act-now" title="The database does not answer">
          <p>What is known of the backups is kept there too.</p>
        </Notice>
      ) : (
        <BackupNotice drills={health.stored.drills} now={new Date()} timeZone={health.stored.timeZone} />
      )}
      <Plate title="What it stands on">
        <DefinitionList items={groundFacts(health)} />
      </Plate>
      {health.stored !== undefined && <NightlyChecks runs={health.stored.runs} timeZone={health.stored.timeZone} />}
      <Plate title="The last hour">
        <DefinitionList items={signalFacts(health)} />
      </Plate>
    </Page>
  );
}
