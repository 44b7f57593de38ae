import type { Metadata } from "next";
import { mayOpen } from "@/app/_people/may-open";
import { ownJobsOnly } from "@/app/_people/own-jobs-only";
import { ButtonLink } from "@/app/_ui/button-link";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadAsks, loadOpenJobs, loadTechnicians } from "@/db/queries/sheet-lists";
import { formatCounted } from "@/lib/format/format-count";
import { AskList } from "./_lists/ask-list";
import { OpenJobList } from "./_lists/open-job-list";
import { TechnicianForm } from "./_lists/technician-form";

export const metadata: Metadata = { title: "Jobs to do" };
export const dynamic = "force-dynamic";

interface Props {
  readonly searchParams: Promise<{ readonly technician?: string | readonly string[] }>;
}

/** What a technician has to do: open jobs, and what the desk asks of closed ones. */
export default async function SheetsPage({ searchParams }: Props) {
  const person = await mayOpen("/sheet");
  const { technician: given } = await searchParams;
  const own = ownJobsOnly(person).technician;
  const technician = own ?? (typeof given === "string" && given !== "" ? given : undefined);
  const { jobs, asks, names } = await readOnly(async (db) => ({
    jobs: await loadOpenJobs(db, technician, { orNobodys: own !== undefined }),
    asks: await loadAsks(db, { open: true, technician }),
    names: own === undefined ? await loadTechnicians(db) : [],
  }));
  return (
    <Page
      title={`${formatCounted(jobs.length, "open job")}${technician === undefined ? "" : ` of ${technician}`}`}
      margin={<p>An open job counts nowhere. Closing it makes it a closed job with its readings, photos and parts.</p>}
      actions={<ButtonLink href="/sheet/open">Open a job</ButtonLink>}
    >
      {own === undefined && <TechnicianForm names={names} chosen={technician} />}
      {jobs.length === 0 ? (
        <EmptyState kind="nothing-due" title="No job is open">
          <p>The desk opens a job by its number, the serial and what the customer notices.</p>
        </EmptyState>
      ) : (
        <OpenJobList jobs={jobs} />
      )}
      {asks.length > 0 && (
        <section className="stack">
          <h2>The desk asks</h2>
          <AskList asks={asks} />
        </section>
      )}
    </Page>
  );
}
