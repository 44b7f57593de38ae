import type { Metadata } from "next";
import Link from "next/link";
import { mayOpen } from "@/app/_people/may-open";
import { ButtonLink } from "@/app/_ui/button-link";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import type { LoadReport } from "@/db/writes/load-result";
import { formatCounted } from "@/lib/format/format-count";
import { alikeProblems, kindKey, kindsOfProblems } from "../../../_components/alike-problems";
import { BrokenWork } from "../../../_components/broken-work";
import { DraftGone } from "../../../_components/draft-gone";
import { ProblemFilter } from "../../../_components/problem-filter";
import { ProblemRows } from "../../../_components/problem-rows";
import { RowSum } from "../../../_components/row-sum";
import { Steps } from "../../../_components/steps";
import { enterStep } from "../../../_draft/enter-step";
import type { OpenDraft } from "../../../_draft/open-draft";
import { stepHrefs } from "../../../_draft/step-hrefs";
import { addressOf } from "../../../_draft/where-it-stands";
import { AddForm } from "./add-form";
import { CorrectionCell } from "./correction-cell";
import { findingOf } from "./finding-of";
import { NotChecked } from "./not-checked";
import { Offers } from "./offers";
import { Changes, KeptEdits, Refused } from "./report-lists";

export const metadata: Metadata = { title: "Check rows" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<{ readonly problem?: string | readonly string[] }>;
}

export default async function RowsPage({ params, searchParams }: Props) {
  await mayOpen("/files/draft/[id]/rows");
  const draft = await enterStep((await params).id);
  if (draft === undefined) return <DraftGone />;
  const { problem } = await searchParams;
  const { checked, broken } = draft.notes;
  return (
    <Page above={<Link href="/files">Files in</Link>} title={findingOf(draft)} margin={<Basis />} wide>
      <Steps at="rows" hrefs={stepHrefs(draft)} />
      <BrokenWork broken={broken} />
      {checked !== undefined && "report" in checked ? (
        <Checked draft={draft} report={checked.report} problem={typeof problem === "string" ? problem : undefined} />
      ) : (
        <NotChecked draft={draft} />
      )}
    </Page>
  );
}

interface CheckedProps {
  readonly draft: OpenDraft;
  readonly report: LoadReport;
  readonly problem: string | undefined;
}

function Checked({ draft, report, problem }: CheckedProps) {
  const { draftId, notes } = draft;
  const groups = alikeProblems(report.problems);
  const kinds = kindsOfProblems(groups);
  const shown = problem === undefined || problem === "" ? groups : groups.filter((group) => kindKey(group) === problem);
  const good = report.rowsNew + report.rowsChanged;
  return (
    <>
      <RowSum counts={report} kind={report.fileKind} />
      {good > 0 || report.rowsHeld > 0 ? (
        <AddForm draftId={draftId} report={report} />
      ) : (
        <EmptyState kind="nothing-due" title="Every row is here already; there is nothing to add" />
      )}
      {groups.length > 0 && (
        <section className="stack">
          <h2>Held back: {formatCounted(report.rowsHeld, "row")}</h2>
          <ProblemFilter action={addressOf(draftId, "rows")} kinds={kinds} chosen={problem} />
          <ProblemRows
            groups={shown}
            {...(!notes.ours && { correction: (group) => <CorrectionCell draft={draft} group={group} /> })}
          />
          {notes.seen !== undefined && (
            <p>
              <ButtonLink href={`${addressOf(draftId)}/report.csv`} download>
                Report as CSV
              </ButtonLink>
            </p>
          )}
        </section>
      )}
      {!notes.ours && <Offers draftId={draftId} report={report} />}
      <Changes report={report} />
      <KeptEdits report={report} />
      <Refused report={report} />
    </>
  );
}

function Basis() {
  return (
    <>
      <p>Nothing has been added yet. Row numbers are those that a spreadsheet shows.</p>
      <p>
        Rows that are held back wait with the load, as they stand, and are in no number; they can be corrected there and
        taken in later. A row that is no record, such as a total, or whose job is void or not closed yet, is left out
        and kept with its reason.
      </p>
    </>
  );
}
