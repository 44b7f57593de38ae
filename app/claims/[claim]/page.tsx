import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { ClaimAmounts, ClaimMargin, ClaimTasks, CoverageWordsPlate } from "@/app/_claims/claim-view";
import { loadClaim } from "@/app/_claims/load-claim";
import { ButtonLink } from "@/app/_ui/button-link";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { formatMoney } from "@/lib/format/format-money";

export const metadata: Metadata = { title: "Claim" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly claim: string }>;
}

export default async function ClaimPage({ params }: Props) {
  const number = decodeURIComponent((await params).claim);
  const open = await readOnly((db) => loadClaim(db, number));
  if (open === undefined) notFound();
  const { row, judged, claim } = open;
  const { assembly } = claim;
  const path = `/claims/${encodeURIComponent(number)}`;
  return (
    <Page
      above={<Link href="/claims">Claims</Link>}
      title={`Claim ${number}: ${formatMoney({ cents: row.claimedCents, currency: row.currency })} from ${row.payer}`}
      margin={<ClaimMargin jobNumber={row.jobNumber} decision={judged.decision} />}
      actions={
        open.packet !== undefined && (
          <>
            <ButtonLink href={`${path}/packet`}>Packet</ButtonLink>
            <ButtonLink href={`${path}/packet.pdf`} download>
              PDF, A4
            </ButtonLink>
            <ButtonLink href={`${path}/packet.pdf?paper=letter`} download>
              PDF, Letter
            </ButtonLink>
          </>
        )
      }
    >
      {assembly.kind === "claim" ? (
        <>
          <ClaimTasks tasks={assembly.claim.tasks} jobNumber={row.jobNumber} />
          <ClaimAmounts claim={assembly.claim} />
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
      <CoverageWordsPlate decision={judged.decision} />
    </Page>
  );
}
