import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { mayOpen } from "@/app/_people/may-open";
import { ButtonLink } from "@/app/_ui/button-link";
import { EmptyState } from "@/app/_ui/empty-state";
import { EstimateText } from "@/app/_ui/estimate-text";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadSymptomCells } from "@/db/queries/sheet-symptom";
import { loadSheets } from "@/db/queries/sheet-versions";
import { loadSymptomGroups, loadSymptomParts } from "@/db/queries/symptom-groups";
import { symptomOf } from "@/lib/domain/symptoms";
import { formatCounted } from "@/lib/format/format-count";
import { ageBands } from "@/lib/sheets/sheet-basis";
import { neededParts } from "@/lib/sheets/symptom-parts";
import { behindSymptom, seasons, symptomLevel } from "@/lib/sheets/symptom-shares";
import { shareEstimate } from "@/lib/statistics/share-estimate";
import { BehindTables } from "./_components/behind-tables";
import { ByGroup } from "./_components/by-group";
import { FirstCheck } from "./_components/first-check";
import { PartsNeeded } from "./_components/parts-needed";
import { SymptomFilter } from "./_components/symptom-filter";
import { asked, describeAsked, readSymptomAddress } from "./read-symptom-address";

export const metadata: Metadata = { title: "Symptom" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly symptom: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export default async function SymptomPage({ params, searchParams }: Props) {
  await mayOpen("/symptoms/[symptom]");
  const { symptom } = await params;
  const address = readSymptomAddress(symptom, await searchParams);
  if (address === undefined) notFound();
  const { productType } = address;
  const { groups, cells, sheets, parts } = await readOnly(async (db) => ({
    groups: await loadSymptomGroups(db, { symptom, productType }),
    cells: await loadSymptomCells(db, { symptom, productType }),
    sheets: await loadSheets(db, productType),
    parts: await loadSymptomParts(db, { symptom, productType }),
  }));
  const chosen = asked(groups, address);
  const behind = behindSymptom(chosen);
  const jobs = chosen.reduce((sum, group) => sum + group.jobs, 0);
  const firstVisit = chosen.reduce((sum, group) => sum + group.firstVisit, 0);
  const name = symptomOf(symptom)?.name ?? symptom;
  const [first] = behind;
  return (
    <Page
      title={first === undefined ? `${name}: no closed job yet` : `${name}: most often ${first.name.toLowerCase()}`}
      above={<Link href="/symptoms">Symptoms</Link>}
      margin={<Basis jobs={jobs} />}
      actions={<ButtonLink href="/sheet/open">Open a job</ButtonLink>}
    >
      <SymptomFilter
        symptom={symptom}
        address={address}
        groups={groups}
        words={`${describeAsked(address)} — ${formatCounted(jobs, "closed job")}`}
      />
      {address.notices.map((notice) => (
        <Notice key={notice} status="note" title={notice} />
      ))}
      {jobs === 0 ? (
        <EmptyState kind="filtered-away" title="No closed job fits this view">
          <p>
            <Link href={`/symptoms/${symptom}?type=${productType}`}>Show all of this kind of appliance</Link>
          </p>
        </EmptyState>
      ) : (
        <>
          <BehindTables behind={behind} />
          <p>
            Closed on the first visit:{" "}
            <EstimateText
              estimate={shareEstimate({ events: firstVisit, trials: jobs, level: symptomLevel, method: "wilson" })}
              counted="jobs"
            />
          </p>
        </>
      )}
      <FirstCheck symptom={symptom} productType={productType} sheets={sheets} cells={cells} />
      {jobs > 0 && (
        <>
          <ByGroup caption="By model" name={({ model }) => model} groups={chosen} />
          <ByGroup caption="By age" name={({ ageBand }) => ageBand} order={ageBands} groups={chosen} />
          <ByGroup caption="By season" name={({ season }) => season} order={seasons} groups={chosen} />
          <PartsNeeded parts={neededParts(asked(parts, address), jobs)} />
        </>
      )}
    </Page>
  );
}

function Basis({ jobs }: { readonly jobs: number }) {
  return (
    <>
      <p>{formatCounted(jobs, "closed job")} that name this symptom. A job counts once, under what was behind it.</p>
      <p>
        The ranges of all shares hold together in {Math.round(symptomLevel * 100)} of 100 such tables (Goodman 1965).
        Causes outside the part stand apart: they are no failures of it.
      </p>
      <p>Seasons are those of the day on which the trouble was reported; ages count from the day in service.</p>
    </>
  );
}
