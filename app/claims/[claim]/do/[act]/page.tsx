import { randomUUID } from "node:crypto";
import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { type ActSlug, actHints, actSlugKeys, actSlugs, actTitles } from "@/app/_claims/act-forms";
import { claimOf, loadClaim, type OpenClaim } from "@/app/_claims/load-claim";
import { mayOpen } from "@/app/_people/may-open";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { actsAfter } from "@/lib/claims/life/judge-act";
import { formatMoney } from "@/lib/format/format-money";
import { ActFields } from "./act-fields";
import { ActForm } from "./act-form";
import { ChecksToSend } from "./checks-to-send";

export const metadata: Metadata = { title: "Claim" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly claim: string; readonly act: string }>;
}

export default async function ClaimActPage({ params }: Props) {
  await mayOpen("/claims/[claim]/do/[act]");
  const { claim, act } = await params;
  const number = decodeURIComponent(claim);
  const slug = actSlugKeys.find((known) => known === act);
  if (slug === undefined) notFound();
  const open = await readOnly((db) => loadClaim(db, number));
  if (open === undefined) notFound();
  const path = `/claims/${encodeURIComponent(number)}`;
  const title = slug === "sent" && open.standing.filings > 0 ? "Correct and send again" : actTitles[slug];
  return (
    <Page
      above={<Link href={path}>Claim {number}</Link>}
      title={`${title}: claim ${number}`}
      margin={<Margin open={open} slug={slug} />}
    >
      <Asked open={open} slug={slug} title={title} back={path} />
    </Page>
  );
}

interface AskedProps {
  readonly open: OpenClaim;
  readonly slug: ActSlug;
  readonly title: string;
  readonly back: string;
}

function Asked({ open, slug, title, back }: AskedProps) {
  const { state } = open.standing;
  if (!actsAfter[state].includes(actSlugs[slug])) {
    return (
      <Notice status="note" title={`The claim is ${state} now, so this can’t be recorded`}>
        <p>
          <Link href={back}>See what can follow</Link>
        </p>
      </Notice>
    );
  }
  const { assembly } = open.claim;
  if (slug === "sent" && assembly.kind === "blocked") {
    return (
      <Notice status="act-now" title="The job does not support this claim as it stands">
        <ul>
          {assembly.reasons.map(({ code, sentence }) => (
            <li key={code}>{sentence}</li>
          ))}
        </ul>
      </Notice>
    );
  }
  return (
    <ActForm
      claimNumber={open.row.claimNumber}
      act={slug}
      version={open.life.version}
      formKey={randomUUID()}
      title={title}
      back={back}
    >
      {slug === "sent" && <ChecksToSend checks={open.checks} jobNumber={open.row.jobNumber} unitId={open.row.unitId} />}
      <ActFields slug={slug} standing={open.standing} today={open.today} />
    </ActForm>
  );
}

function Margin({ open, slug }: { readonly open: OpenClaim; readonly slug: ActSlug }) {
  const { row, standing } = open;
  const money = (cents: number) => formatMoney({ cents, currency: row.currency });
  const claim = claimOf(open);
  return (
    <>
      <p>{actHints[slug]}</p>
      <p>
        {row.payer}, job <Link href={`/jobs/${encodeURIComponent(row.jobNumber)}`}>{row.jobNumber}</Link>.
      </p>
      {slug === "sent" && claim !== undefined ? (
        <p>Asked: {money(claim.totalCents)}.</p>
      ) : (
        <p>
          Asked {money(standing.askedCents)}, paid {money(standing.paidCents)}, open {money(standing.openCents)}.
        </p>
      )}
      <p>Every act stays in the history with its day, its reason and who entered it. None is ever changed.</p>
    </>
  );
}
