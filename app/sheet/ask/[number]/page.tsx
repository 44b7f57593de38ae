import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { loadJudgedJob } from "@/app/_claims/judge-job";
import { mayOpen } from "@/app/_people/may-open";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadAsks } from "@/db/queries/sheet-lists";
import { formatCounted } from "@/lib/format/format-count";
import { askableGaps } from "@/lib/sheets/askable-gaps";
import { GapRow } from "./gap-row";

export const metadata: Metadata = { title: "Ask the technician" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly number: string }>;
}

/** What a claim on the job lacks, one act for each thing that the technician can still give. */
export default async function AskPage({ params }: Props) {
  await mayOpen("/sheet/ask/[number]");
  const number = decodeURIComponent((await params).number);
  const found = await readOnly(async (db) => ({
    judged: (await loadJudgedJob(db, number))?.judged,
    asks: await loadAsks(db, { jobNumber: number }),
  }));
  if (found.judged === undefined) notFound();
  const { evidence, stored } = found.judged;
  const gaps = askableGaps(evidence);
  const technician = stored.record.job.technician;
  return (
    <Page
      title={`Job ${number} lacks ${gaps.length === 0 ? "nothing" : formatCounted(gaps.length, "thing")} that ${technician ?? "its technician"} could give`}
      above={<Link href={`/jobs/${encodeURIComponent(number)}`}>Job {number}</Link>}
      margin={
        <p>What is asked stands in Today and in the technician’s list until it is given, or said to be past having.</p>
      }
    >
      {gaps.length === 0 ? (
        <EmptyState kind="nothing-due" title="Nothing that a technician could give is missing">
          <p>{evidence.verdict}</p>
        </EmptyState>
      ) : (
        <ul className="bare-list stack">
          {gaps.map((gap) => (
            <li key={gap.item}>
              <GapRow jobNumber={number} gap={gap} ask={found.asks.find(({ item }) => item === gap.item)} />
            </li>
          ))}
        </ul>
      )}
    </Page>
  );
}
