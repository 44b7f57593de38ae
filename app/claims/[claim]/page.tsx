import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { actTitles, slugOf } from "@/app/_claims/act-forms";
import { ClaimHistory } from "@/app/_claims/claim-history";
import { ClaimStandingView } from "@/app/_claims/claim-standing-view";
import { ClaimAmounts, ClaimMargin, ClaimTasks, CoverageWordsPlate } from "@/app/_claims/claim-view";
import { FilingChecks } from "@/app/_claims/filing-checks";
import { loadClaim, type OpenClaim } from "@/app/_claims/load-claim";
import { mayOpen } from "@/app/_people/may-open";
import { ButtonLink } from "@/app/_ui/button-link";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadShop } from "@/db/queries/shop";
import type { ClaimState } from "@/lib/claims/life/claim-standing";
import { actsAfter } from "@/lib/claims/life/judge-act";
import { formatMoney } from "@/lib/format/format-money";

export const metadata: Metadata = { title: "Claim" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly claim: string }>;
}

export default async function ClaimPage({ params }: Props) {
  await mayOpen("/claims/[claim]");
  const number = decodeURIComponent((await params).claim);
  const { open, timeZone } = await readOnly(async (db) => ({
    open: await loadClaim(db, number),
    timeZone: (await loadShop(db)).timeZone,
  }));
  if (open === undefined) notFound();
  const { row, judged, life, standing, deadlines, today } = open;
  const wasSent = standing.filings > 0;
  return (
    <Page
      above={<Link href="/claims">Claims</Link>}
      title={titleOf(open)}
      margin={<ClaimMargin jobNumber={row.jobNumber} judged={judged} />}
      actions={
        <>
          {mayBeSent(standing.state) && (
            <ButtonLink href={`/sheet/ask/${encodeURIComponent(row.jobNumber)}`}>Ask the technician</ButtonLink>
          )}
          <PacketLinks open={open} />
        </>
      }
    >
      <ClaimActs open={open} />
      {wasSent && (
        <>
          <ChangedNotice open={open} />
          <ClaimStandingView standing={standing} deadlines={deadlines} currency={row.currency} today={today} />
        </>
      )}
      {mayBeSent(standing.state) && <Builder open={open} />}
      <ClaimHistory
        claimNumber={row.claimNumber}
        events={life.events}
        submissions={life.submissions}
        currency={row.currency}
        timeZone={timeZone}
      />
      <CoverageWordsPlate decision={judged.decision} />
    </Page>
  );
}

function mayBeSent(state: ClaimState): boolean {
  return actsAfter[state].includes("sent");
}

/** What the claim is made of as long as it can be sent: tasks, amounts, evidence and checks, from the job as it stands. */
function Builder({ open }: { readonly open: OpenClaim }) {
  const { row, judged, claim, checks } = open;
  const { assembly } = claim;
  return (
    <>
      {assembly.kind === "claim" ? (
        <>
          <ClaimTasks tasks={assembly.claim.tasks} jobNumber={row.jobNumber} unitId={row.unitId} />
          <ClaimAmounts claim={assembly.claim} />
          <FilingChecks checks={checks} jobNumber={row.jobNumber} unitId={row.unitId} />
        </>
      ) : (
        <Notice status="act-now" title="The job no longer supports this draft">
          <ul>
            {assembly.reasons.map((reason) => (
              <li key={reason.code}>{reason.sentence}</li>
            ))}
          </ul>
        </Notice>
      )}
      <Notice status={judged.evidence.kind === "proven" ? "fine" : "watch"} title="Evidence">
        <p>{judged.evidence.verdict}</p>
      </Notice>
    </>
  );
}

/** Only what may follow now, the next step first. */
function ClaimActs({ open: { row, standing } }: { readonly open: OpenClaim }) {
  const slugs = actsAfter[standing.state].map(slugOf).filter((slug) => slug !== undefined);
  if (slugs.length === 0) return null;
  return (
    <nav className="cluster no-print" aria-label="What can follow">
      {slugs.map((slug, index) => (
        <ButtonLink
          key={slug}
          href={`/claims/${encodeURIComponent(row.claimNumber)}/do/${slug}`}
          weight={index === 0 ? "main" : "plain"}
        >
          {slug === "sent" && standing.filings > 0 ? "Correct and send again" : actTitles[slug]}
        </ButtonLink>
      ))}
    </nav>
  );
}

function ChangedNotice({ open: { changed, row } }: { readonly open: OpenClaim }) {
  if (changed.length === 0) return null;
  return (
    <Notice status="note" title="The job is no longer as it was sent">
      <p>
        Different now: {changed.join(", ").toLowerCase()}.{" "}
        <Link href={`/claims/${encodeURIComponent(row.claimNumber)}/sent/${row.filings}`}>What was sent</Link> stays as
        it was.
      </p>
    </Notice>
  );
}

function PacketLinks({ open: { row, packet } }: { readonly open: OpenClaim }) {
  if (packet === undefined) return null;
  const path = `/claims/${encodeURIComponent(row.claimNumber)}`;
  return (
    <>
      <ButtonLink href={`${path}/packet`}>Packet</ButtonLink>
      <ButtonLink href={`${path}/packet.pdf?paper=a4`} download>
        PDF, A4
      </ButtonLink>
      <ButtonLink href={`${path}/packet.pdf?paper=letter`} download>
        PDF, Letter
      </ButtonLink>
      <ButtonLink href={`${path}/claim.json`} download>
        JSON
      </ButtonLink>
    </>
  );
}

function titleOf({ row, standing }: OpenClaim): string {
  const amount = formatMoney({ cents: row.claimedCents, currency: row.currency });
  return `Claim ${row.claimNumber}: ${amount} from ${row.payer}, ${standing.state === "draft" ? "a draft" : standing.state}`;
}
