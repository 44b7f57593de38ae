import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { mayOpenJob } from "@/app/_people/may-open";
import { DefinitionList } from "@/app/_ui/definition-list";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { Tag } from "@/app/_ui/tag";
import { SheetFlow } from "@/app/sheet/_flow/sheet-flow";
import type { SheetView } from "@/app/sheet/_flow/sheet-view";
import { componentOf } from "@/lib/domain/components";
import { formatCounted } from "@/lib/format/format-count";
import { formatDay } from "@/lib/format/format-day";
import { loadSheetView } from "./load-sheet-view";

export const metadata: Metadata = { title: "Check sheet" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly number: string }>;
}

export default async function SheetPage({ params }: Props) {
  const person = await mayOpenJob("/sheet/job/[number]", decodeURIComponent((await params).number));
  const found = await loadSheetView(decodeURIComponent((await params).number));
  if (found.kind === "none") notFound();
  if (found.kind === "closed")
    return (
      <Page
        title={`Job ${found.jobNumber} is closed`}
        above={<a href="/sheet">Your jobs</a>}
        margin={<p>A closed job has no sheet to go on with.</p>}
      >
        <EmptyState kind="nothing-due" title="Its readings, photos and story are on the job">
          <p>
            <Link href={`/jobs/${encodeURIComponent(found.jobNumber)}`}>See job {found.jobNumber}</Link>
          </p>
        </EmptyState>
      </Page>
    );
  const view = { ...found.view, person: person.id };
  return (
    <Page title={`Job ${view.jobNumber}`} above={<a href="/sheet">Your jobs</a>} margin={<Basis view={view} />}>
      <p>
        <Tag>{view.unit.serial ?? "no serial"}</Tag> {view.unit.maker} {view.unit.model}
      </p>
      <SheetFlow view={view} />
    </Page>
  );
}

/** What the order rests on, and which versions the job is worked by. */
function Basis({ view }: { readonly view: SheetView }) {
  const { basis } = view;
  return (
    <>
      <p>
        {basis === undefined
          ? "No closed job of this symptom is on file."
          : `${formatCounted(basis.jobs, "closed job")} of this symptom on this kind of machine, ${basis.ownJobs} of them on this model at this age.`}
      </p>
      <DefinitionList
        items={[
          { term: "Asked for", detail: formatDay(view.requestedOn) },
          { term: "Technician", detail: view.technician ?? "not named" },
          ...view.sheets.map((sheet) => ({
            term: componentOf(sheet.component)?.name ?? sheet.component,
            detail: `version ${sheet.version}`,
          })),
        ]}
      />
    </>
  );
}
