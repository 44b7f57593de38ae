import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { loadJudgedJob } from "@/app/_claims/judge-job";
import { mayOpenJob } from "@/app/_people/may-open";
import { ButtonLink } from "@/app/_ui/button-link";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadCallbacksOfJob } from "@/db/queries/callbacks";
import { loadEditDifferences } from "@/db/queries/edit-differences";
import { CallbackNote } from "./_components/callback-note";
import { JobMargin } from "./_components/job-margin";
import { JobParts } from "./_components/job-parts";
import { JobPhotos } from "./_components/job-photos";
import { JobReadings } from "./_components/job-readings";
import { JobSheet } from "./_components/job-sheet";
import { JobStory } from "./_components/job-story";
import { jobFinding } from "./job-finding";

export const metadata: Metadata = { title: "Job" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly number: string }>;
}

export default async function JobPage({ params }: Props) {
  await mayOpenJob("/jobs/[number]", decodeURIComponent((await params).number));
  const number = decodeURIComponent((await params).number);
  const { found, differences, callbacks } = await readOnly(async (db) => ({
    found: await loadJudgedJob(db, number),
    callbacks: await loadCallbacksOfJob(db, number),
    differences: await loadEditDifferences(db, number),
  }));
  if (found === undefined) notFound();
  const { judged, drafts, timeZone } = found;
  const { record } = judged.stored;
  const path = encodeURIComponent(number);
  return (
    <Page
      above={<Link href="/jobs">Jobs</Link>}
      title={jobFinding(record)}
      margin={<JobMargin judged={judged} drafts={drafts} />}
      actions={
        <>
          {judged.evidence.kind === "missing" && (
            <ButtonLink href={`/sheet/ask/${path}`}>Ask the technician</ButtonLink>
          )}
          <ButtonLink
            href={
              drafts[0] === undefined ? `/claims/for/${path}` : `/claims/${encodeURIComponent(drafts[0].claimNumber)}`
            }
            weight="main"
          >
            {drafts[0] === undefined ? "Can this be claimed?" : `Claim ${drafts[0].claimNumber}`}
          </ButtonLink>
        </>
      }
    >
      {differences.length > 0 && (
        <Notice status="watch" title="A file says otherwise of a field that was set here">
          <p>
            What was set here stands. <Link href={`/jobs/${path}/history`}>Settle it</Link>
          </p>
        </Notice>
      )}
      <CallbackNote jobNumber={number} callbacks={callbacks} />
      <JobStory record={record} />
      <Notice status={judged.evidence.kind === "proven" ? "fine" : "note"} title="What the evidence shows">
        <p>{judged.evidence.verdict}</p>
        {judged.evidence.contradictions.map(({ why }) => (
          <p key={why}>{why}</p>
        ))}
        {judged.evidence.outside.map(({ why }) => (
          <p key={why}>{why}</p>
        ))}
      </Notice>
      <JobReadings record={record} ranges={judged.ranges} />
      <JobSheet job={judged.stored} />
      <JobPhotos record={record} timeZone={timeZone} />
      <JobParts record={record} />
    </Page>
  );
}
