import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { ClaimAmounts, ClaimMargin, ClaimTasks, CoverageWordsPlate } from "@/app/_claims/claim-view";
import { type JudgedClaim, type JudgedJob, loadJudgedJob } from "@/app/_claims/judge-job";
import { mayOpen } from "@/app/_people/may-open";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import type { BlockReason } from "@/lib/claims/claim";
import { formatMoney } from "@/lib/format/format-money";
import { KeepForm } from "./keep-form";

export const metadata: Metadata = { title: "Start a claim" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly number: string }>;
}

export default async function StartClaimPage({ params }: Props) {
  await mayOpen("/claims/for/[number]");
  const number = decodeURIComponent((await params).number);
  const found = await readOnly((db) => loadJudgedJob(db, number));
  if (found === undefined) notFound();
  const { judged, drafts } = found;
  return (
    <Page
      above={<Link href={`/jobs/${encodeURIComponent(number)}`}>Job {number}</Link>}
      title={findingOf(number, judged)}
      margin={<ClaimMargin jobNumber={number} judged={judged} />}
    >
      {judged.claims.length === 0 && (
        <Notice status="note" title="No coverage policy is on file for this maker">
          <p>Load the maker’s terms first; without them there is nothing to decide by.</p>
        </Notice>
      )}
      {judged.claims.map((claim) => (
        <OneClaim
          key={claim.policyId}
          claim={claim}
          jobNumber={number}
          unitId={judged.stored.unitId}
          draft={drafts.find((draft) => draft.policyId === claim.policyId)?.claimNumber}
        />
      ))}
      <Notice status={judged.evidence.kind === "proven" ? "fine" : "note"} title="Evidence">
        <p>{judged.evidence.verdict}</p>
      </Notice>
      <CoverageWordsPlate decision={judged.decision} />
    </Page>
  );
}

/** What settles that there is nothing to claim: no paper or reading that could be added would change it. */
const settled: ReadonlySet<BlockReason["code"]> = new Set(["not_closed", "outside_cause", "no_fault_found"]);

interface OneProps {
  readonly claim: JudgedClaim;
  readonly jobNumber: string;
  readonly unitId: string;
  readonly draft: string | undefined;
}

function OneClaim({ claim: { assembly, given, policyId }, jobNumber, unitId, draft }: OneProps) {
  if (assembly.kind === "blocked") {
    return (
      <>
        <Notice status="note" title={`No claim on ${given.policy.name}`}>
          <ul>
            {assembly.reasons.map((reason) => (
              <li key={reason.code}>{reason.sentence}</li>
            ))}
          </ul>
        </Notice>
        {assembly.reasons.every(({ code }) => !settled.has(code)) && (
          <ClaimTasks tasks={assembly.tasks} jobNumber={jobNumber} unitId={unitId} />
        )}
      </>
    );
  }
  return (
    <>
      <h2>
        {given.policy.name}, version {given.policy.version}
      </h2>
      <ClaimTasks tasks={assembly.claim.tasks} jobNumber={jobNumber} unitId={unitId} />
      <ClaimAmounts claim={assembly.claim} />
      {draft === undefined ? (
        <KeepForm jobNumber={jobNumber} policyId={policyId} />
      ) : (
        <p>
          Already a draft: <Link href={`/claims/${encodeURIComponent(draft)}`}>{draft}</Link>
        </p>
      )}
    </>
  );
}

function findingOf(number: string, { claims }: JudgedJob): string {
  const open = claims.flatMap(({ assembly }) => (assembly.kind === "claim" ? [assembly.claim] : []));
  const [first] = open;
  if (first === undefined) return `Job ${number} can’t become a claim`;
  const cents = open.reduce((sum, claim) => sum + claim.totalCents, 0);
  const lacking = first.tasks.filter((task) => task.state === "missing").length;
  const amount = formatMoney({ cents, currency: first.currency });
  return lacking === 0
    ? `Job ${number}: ${amount} can be claimed, everything is in place`
    : `Job ${number}: ${amount} can be claimed, ${lacking} of 6 still lack something`;
}
