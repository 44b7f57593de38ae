import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { mayOpen } from "@/app/_people/may-open";
import { ErrorSummary } from "@/app/_ui/error-summary";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { placeDraft } from "@/db/queries/place-draft";
import { findPolicyDraft, type PolicyDraft } from "@/db/queries/policy-versions";
import { problemsByField } from "../../_components/form-part";
import { PolicyForm } from "../../_components/policy-form";
import { problemLines } from "../../problem-lines";

export const metadata: Metadata = { title: "Draft of a policy" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export default async function PolicyDraftPage({ params, searchParams }: Props) {
  await mayOpen("/shop/coverage/draft/[id]");
  const { id } = await params;
  const { saved, apart } = await searchParams;
  if (!/^\d{1,9}$/.test(id)) notFound();
  const found = await readOnly(async (db) => {
    const draft = await findPolicyDraft(db, Number(id));
    return draft && { draft, placed: await placeDraft(db, draft.document) };
  });
  if (found === undefined) notFound();
  const { draft, placed } = found;
  const isChecked = saved === "checked";
  const problems = isChecked && placed.kind === "problems" ? placed.problems : [];
  return (
    <Page above={<Link href="/shop/coverage">Coverage</Link>} title={titleOf(draft)} margin={<Basis />} wide>
      <ErrorSummary problems={problemLines(problems)} />
      {typeof apart === "string" && (
        <Notice status="watch" title="Somebody else saved this draft meanwhile">
          <p>
            What you typed is kept here as a draft of its own. The other one is{" "}
            <Link href={`/shop/coverage/draft/${encodeURIComponent(apart)}`}>draft {apart}</Link>.
          </p>
        </Notice>
      )}
      {saved === "yes" && <Notice status="fine" title="Saved as a draft" />}
      {isChecked && problems.length === 0 && (
        <Notice status="fine" title="Nothing is missing">
          <p>See next what it would change.</p>
        </Notice>
      )}
      <PolicyForm draft={draft} problems={problemsByField(problems)} />
    </Page>
  );
}

function titleOf({ document }: PolicyDraft): string {
  return typeof document.name === "string" ? `${document.name}: a version being written` : "A policy being written";
}

function Basis() {
  return (
    <>
      <p>
        A draft decides nothing and can be left at any time. Before it is published it shows which open decisions it
        would alter.
      </p>
      <p>Lengths keep the unit of the terms: 12 months are not 365 days.</p>
    </>
  );
}
