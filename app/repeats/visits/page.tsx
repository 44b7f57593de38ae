import type { Metadata } from "next";
import Link from "next/link";
import type { AddressValues } from "@/app/_address/address-reader";
import { mayOpen } from "@/app/_people/may-open";
import { Field } from "@/app/_ui/field";
import { Figure } from "@/app/_ui/figure";
import { FilterForm } from "@/app/_ui/filter-form";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { SelectField } from "@/app/_ui/select-field";
import { visitDimensions } from "@/db/queries/visit-shares";
import { formatCounted } from "@/lib/format/format-count";
import { formatShare } from "@/lib/format/format-share";
import { loadVisits, type VisitsView, visitsAddress } from "./load-visits";
import { visitDimensionNames } from "./read-visits-address";
import { ShareFunnelChart } from "./share-funnel-chart";
import { VisitTable } from "./visits-page-rows";

export const metadata: Metadata = { title: "First visits and returns" };
export const dynamic = "force-dynamic";

interface Props {
  readonly searchParams: Promise<AddressValues>;
}

export default async function VisitsPage({ searchParams }: Props) {
  await mayOpen("/repeats/visits");
  const view = await loadVisits(await searchParams);
  const back = <Link href="/repeats">Repeats</Link>;
  if (view === undefined || view.all.jobs === 0)
    return (
      <Page above={back} title="No closed jobs in this period" margin={<p>Shares need closed jobs.</p>}>
        <p>
          Choose another period, or <Link href="/files/new">load jobs</Link>.
        </p>
      </Page>
    );
  const { question, notices, rows, all } = view;
  const { firstVisit } = all;
  return (
    <Page above={back} title={finding(view)} margin={<Basis />} wide>
      {notices.length > 0 && (
        <Notice status="note" title="Part of the address was left out">
          {notices.map((notice) => (
            <p key={notice}>{notice}</p>
          ))}
        </Notice>
      )}
      <FilterForm
        action="/repeats/visits"
        words={`By ${question.by.map((dimension) => visitDimensionNames[dimension].toLowerCase()).join(" and ")}`}
        clearHref="/repeats/visits"
      >
        <SelectField label="Group by" name="by" choices={choices} value={question.by[0]} />
        <SelectField label="and by" name="and" none="Nothing else" choices={choices} value={question.by[1]} />
        <Field label="From" name="from" type="date" value={question.from} />
        <Field label="To" name="to" type="date" />
      </FilterForm>
      {firstVisit !== undefined && firstVisit.point > 0 && firstVisit.point < 1 && (
        <Figure
          takeaway="Done at the first visit, by number of jobs"
          csvHref={`/repeats/visits/visits.csv?${visitsAddress(question)}`}
          note={
            <p>
              Along: closed jobs of the group. Up: jobs in 100 done at the first visit. Line: all together. Dashed:
              limits that 95 in 100 groups keep by chance; solid: 99.8. A group outside may have other jobs, not other
              skill.
            </p>
          }
          table={<VisitTable by={question.by} rows={rows} all={all} />}
        >
          <ShareFunnelChart
            label="Done at the first visit"
            overall={firstVisit.point}
            points={rows
              .flatMap(({ key, firstVisit: share }) => (share === undefined ? [] : [{ name: key, share }]))
              .slice(0, 40)}
          />
        </Figure>
      )}
      {!question.by.includes("technician") && <VisitTable by={question.by} rows={rows} all={all} />}
    </Page>
  );
}

const choices = visitDimensions.map((value) => ({ value, name: visitDimensionNames[value] }));

function finding({ all }: VisitsView): string {
  const first =
    all.firstVisit === undefined
      ? ""
      : `${formatShare(all.firstVisit.point, 0)} in 100 jobs are done at the first visit`;
  const back = all.calledBack === undefined ? "" : `${formatShare(all.calledBack.point, 1)} in 100 are returned to`;
  return `${[first, back].filter((words) => words !== "").join("; ")}, of ${formatCounted(all.jobs, "closed job")}.`;
}

function Basis() {
  return (
    <>
      <p>
        Closed jobs of any cause, by the day of closing. A job without its number of visits counts for returns only.
      </p>
      <p>
        A return is a job that names the earlier one. About half of all returns are opened as new jobs without a word of
        the old one (common practice, no source), so the share is a lower limit.
      </p>
      <p>Groups stand by name. People are shown as a funnel only: who gets the hard jobs finishes fewer at once.</p>
    </>
  );
}
