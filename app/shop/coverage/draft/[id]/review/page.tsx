import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { mayOpen } from "@/app/_people/may-open";
import { ButtonLink } from "@/app/_ui/button-link";
import { ErrorSummary } from "@/app/_ui/error-summary";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { Plate } from "@/app/_ui/plate";
import { readOnly } from "@/db/client";
import { formatCounted } from "@/lib/format/format-count";
import { formatPlainDay } from "@/lib/format/format-day";
import { AlteredTable } from "../../../_components/altered-table";
import { PolicyTerms } from "../../../_components/policy-terms";
import { PublishForm } from "../../../_components/publish-form";
import { SentencePlates } from "../../../_components/sentence-plates";
import { alteredSum } from "../../../altered-words";
import type { PolicyImpact } from "../../../load-policy-impact";
import { problemLines } from "../../../problem-lines";
import { loadReview } from "./load-review";

export const metadata: Metadata = { title: "Review of a policy" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export default async function PolicyReviewPage({ params, searchParams }: Props) {
  await mayOpen("/shop/coverage/draft/[id]/review");
  const { id } = await params;
  const { problem } = await searchParams;
  const review = await readOnly((db) => loadReview(db, id));
  if (review === undefined) notFound();
  const { draft, placed, impact } = review;
  const back = `/shop/coverage/draft/${draft.draftId}`;
  const above = <Link href={back}>The draft</Link>;
  if (placed.kind === "problems") {
    return (
      <Page above={above} title="This draft cannot be published yet" margin={<Basis />}>
        <ErrorSummary problems={problemLines(placed.problems).map(({ text }) => ({ text }))} />
        <ButtonLink href={`${back}?saved=checked`}>Show these in the form</ButtonLink>
      </Page>
    );
  }
  const { policy, place } = placed;
  if (place.kind === "overlaps" || impact === undefined) {
    return (
      <Page above={above} title="This version would overlap another one" margin={<Basis />}>
        <Notice status="act-now" title="No sale day may lie under two versions">
          <p>{place.kind === "overlaps" ? place.sentence : ""}</p>
        </Notice>
        <ButtonLink href={back}>Change the draft</ButtonLink>
      </Page>
    );
  }
  return (
    <Page above={above} title={findingOf(impact)} margin={<Basis impact={impact} />}>
      {problem === "changed" && (
        <Notice status="watch" title="The draft was saved again after you looked">
          <p>Nothing was published. This is what it would change now.</p>
        </Notice>
      )}
      {place.kind === "closes" && (
        <Notice status="note" title={`Version ${place.version} is closed`}>
          <p>
            {`It runs without end. Once this version is published it governs units sold up to ${formatPlainDay(place.on)}; its terms stay as they are.`}
          </p>
        </Notice>
      )}
      <AlteredTable impact={impact} csvHref={`${back}/review/changes.csv`} />
      <Plate title={`Publish ${policy.name}, version ${policy.version}`}>
        <PublishForm draft={draft} approvedBy={policy.approvedBy} />
      </Plate>
      <PolicyTerms policy={policy} />
      <SentencePlates policy={policy} />
    </Page>
  );
}

function findingOf(impact: PolicyImpact): string {
  if (impact.altered.length === 0) return "Publishing this would alter no open decision";
  return `Publishing this would alter ${formatCounted(impact.altered.length, "open decision")}: ${alteredSum(impact)}`;
}

function Basis({ impact }: { readonly impact?: PolicyImpact }) {
  return (
    <>
      {impact !== undefined && (
        <p>
          Looked at: {formatCounted(impact.drafts, "draft claim")} and {formatCounted(impact.jobs, "job")} closed since{" "}
          {formatPlainDay(impact.since)} that nobody has claimed; older ones are past every filing window. Claims that
          were sent are not touched.
        </p>
      )}
      <p>A published version is never edited. The wording of the terms and local law decide.</p>
    </>
  );
}
