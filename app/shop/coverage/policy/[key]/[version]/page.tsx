import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { instantIn } from "@/app/_claims/instant-in";
import { mayOpen } from "@/app/_people/may-open";
import { Button } from "@/app/_ui/button";
import { ButtonLink } from "@/app/_ui/button-link";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { Plate } from "@/app/_ui/plate";
import { readOnly } from "@/db/client";
import { findPolicyVersion } from "@/db/queries/policy-versions";
import { loadShop } from "@/db/queries/shop";
import { formatCounted } from "@/lib/format/format-count";
import { formatPlainDay } from "@/lib/format/format-day";
import { PolicyTerms } from "../../../_components/policy-terms";
import { RetireForm } from "../../../_components/retire-form";
import { SentencePlates } from "../../../_components/sentence-plates";
import { startVersion } from "../../../actions";
import { salesWords, versionPath } from "../../../version-state";

export const metadata: Metadata = { title: "Policy" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly key: string; readonly version: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export default async function PolicyVersionPage({ params, searchParams }: Props) {
  await mayOpen("/shop/coverage/policy/[key]/[version]");
  const { key, version } = await params;
  const { published, problem } = await searchParams;
  if (!/^\d{1,9}$/.test(version)) notFound();
  const { found, timeZone } = await readOnly(async (db) => ({
    found: await findPolicyVersion(db, decodeURIComponent(key), Number(version)),
    timeZone: (await loadShop(db)).timeZone,
  }));
  if (found === undefined) notFound();
  const { policy, retired } = found;
  return (
    <Page
      above={<Link href="/shop/coverage">Coverage</Link>}
      title={`${policy.name}, version ${policy.version}: ${retired === undefined ? `units sold ${salesWords(found)}` : "retired"}`}
      margin={<Margin found={found} timeZone={timeZone} />}
      actions={
        <>
          <form action={startVersion}>
            <input type="hidden" name="from" value={found.policyId} />
            <Button>New version</Button>
          </form>
          <ButtonLink href={`${versionPath(policy)}/policy.json`}>Save as JSON</ButtonLink>
        </>
      }
    >
      {published === "yes" && (
        <Notice status="fine" title="Published">
          <p>It decides from now on. Claims that were sent keep the version that decided them.</p>
        </Notice>
      )}
      {retired !== undefined && (
        <Notice status="note" title={`Retired on ${instantIn(retired.at, timeZone)} by ${retired.by}`}>
          <p>{retired.reason}</p>
        </Notice>
      )}
      <PolicyTerms policy={policy} />
      <SentencePlates policy={policy} />
      {retired === undefined && (
        <Plate title="Retire this version">
          <RetireForm policyKey={policy.key} version={policy.version} problem={problem === "retire"} />
        </Plate>
      )}
    </Page>
  );
}

interface MarginProps {
  readonly found: NonNullable<Awaited<ReturnType<typeof findPolicyVersion>>>;
  readonly timeZone: string;
}

function Margin({ found, timeZone }: MarginProps) {
  const { policy, publishedAt, publishedBy, batchId, claims } = found;
  return (
    <>
      <p>
        {policy.sourceDocument} ({policy.sourceMark}). Approved by {policy.approvedBy} on{" "}
        {formatPlainDay(policy.approvedOn)}.
      </p>
      <p>
        Published on {instantIn(publishedAt, timeZone)}
        {publishedBy !== null && ` by ${publishedBy}`}
        {batchId !== null && (
          <>
            {" "}
            with <Link href={`/files/${batchId}`}>load {batchId}</Link>
          </>
        )}
        . {claims === 0 ? "No claim rests on it." : `${formatCounted(claims, "claim")} rest on it.`}
      </p>
      <p>The wording of the terms and local law decide. This is no legal advice.</p>
    </>
  );
}
