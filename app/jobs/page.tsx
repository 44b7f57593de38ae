import type { Metadata } from "next";
import Link from "next/link";
import type { AddressValues } from "@/app/_address/address-reader";
import { mayOpen } from "@/app/_people/may-open";
import { ownJobsOnly } from "@/app/_people/own-jobs-only";
import { ButtonLink } from "@/app/_ui/button-link";
import { EmptyState } from "@/app/_ui/empty-state";
import { ListPages } from "@/app/_ui/list-pages";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadJobList } from "@/db/queries/job-list";
import { loadFilterWords } from "@/db/queries/known-words";
import { keptRecordCounts } from "@/db/queries/record-counts";
import { formatCounted } from "@/lib/format/format-count";
import { may } from "@/lib/people/permissions";
import { JobFilterForm } from "./_components/job-filter-form";
import { JobTable } from "./_components/job-table";
import { jobsAddress } from "./jobs-address";
import { readJobFilter } from "./read-job-filter";

export const metadata: Metadata = { title: "Jobs" };
export const dynamic = "force-dynamic";

const rowsOnPage = 50;

interface Props {
  readonly searchParams: Promise<AddressValues>;
}

export default async function JobsPage({ searchParams }: Props) {
  const person = await mayOpen("/jobs");
  const address = readJobFilter(await searchParams);
  const filter = { ...address.filter, ...ownJobsOnly(person) };
  const { list, words } = await readOnly(async (db) => ({
    list: await loadJobList(db, filter, {
      offset: (address.page - 1) * rowsOnPage,
      limit: rowsOnPage,
      allJobs: (await keptRecordCounts(db)).jobs,
    }),
    words: await loadFilterWords(db),
  }));
  const csvHref = `/jobs/jobs.csv?${jobsAddress(address.inForce)}`;
  const filtered = address.inForce.length > 0;
  return (
    <Page
      title={filtered ? `${formatCounted(list.total, "job")} in this view` : formatCounted(list.total, "job")}
      margin={<Basis />}
      actions={
        <>
          <ButtonLink href="/sheet">Open jobs and check sheets</ButtonLink>
          <ButtonLink href="/symptoms">Symptoms</ButtonLink>
          {list.total > 0 && may(person.role, "jobs.file") && (
            <ButtonLink href={csvHref} isExport>{`CSV of ${formatCounted(list.total, "job")}`}</ButtonLink>
          )}
        </>
      }
      wide
    >
      {address.notices.map((notice) => (
        <Notice key={notice} status="note" title={notice} />
      ))}
      <JobFilterForm address={address} words={words} />
      {list.rows.length > 0 && <JobTable rows={list.rows} />}
      {list.total === 0 && !filtered && (
        <EmptyState kind="never-used" title="No jobs yet">
          <p>
            <Link href="/files/new">Load a file of closed jobs</Link>.
          </p>
        </EmptyState>
      )}
      {list.rows.length === 0 && filtered && (
        <EmptyState kind="filtered-away" title="No job fits this filter">
          <p>
            <Link href="/jobs">Show all jobs</Link>
          </p>
        </EmptyState>
      )}
      <ListPages
        page={address.page}
        pages={Math.ceil(list.total / rowsOnPage)}
        hrefOf={(page) => `/jobs?${jobsAddress(address.inForce, { page: page === 1 ? undefined : String(page) })}`}
      />
    </Page>
  );
}

function Basis() {
  return (
    <>
      <p>All jobs that were loaded, the latest completed first. Complaint and finding stand as they were written.</p>
      <p>Void, cancelled, estimated and duplicated jobs are kept and shown, and counted nowhere.</p>
      <p>The file holds every row of this view, not this page only.</p>
    </>
  );
}
