import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { mayOpenJob } from "@/app/_people/may-open";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadExpectedRanges } from "@/db/queries/expected-ranges";
import { loadJobRecord } from "@/db/queries/job-record";
import { loadAnswers } from "@/db/queries/sheet-job";
import { loadAsks } from "@/db/queries/sheet-lists";
import { loadNotesOfUnit } from "@/db/queries/technician-notes";
import { formatCounted } from "@/lib/format/format-count";
import { AskedFlow } from "./asked-flow";

export const metadata: Metadata = { title: "Asked by the desk" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly number: string }>;
}

/** What the desk asks of a closed job: the check or the picture, then one word back. */
export default async function AskedPage({ params }: Props) {
  const person = await mayOpenJob("/sheet/asked/[number]", decodeURIComponent((await params).number));
  const number = decodeURIComponent((await params).number);
  const found = await readOnly(async (db) => {
    const stored = await loadJobRecord(db, number);
    if (stored === undefined) return undefined;
    return {
      record: stored.record,
      asks: (await loadAsks(db, { jobNumber: number })).filter(({ answer }) => answer === undefined),
      answers: await loadAnswers(db, stored),
      ranges: await loadExpectedRanges(db, stored.modelId),
      notes: (await loadNotesOfUnit(db, stored.unitId)).map(({ words }) => words),
    };
  });
  if (found === undefined) notFound();
  const { record, asks, answers, ranges, notes } = found;
  return (
    <Page
      title={`Job ${number}: the desk asks for ${formatCounted(asks.length, "thing")}`}
      above={<a href="/sheet">Your jobs</a>}
      margin={<p>The job is closed. What is given here becomes part of it at once, and its claim is judged anew.</p>}
    >
      {asks.length === 0 ? (
        <EmptyState kind="nothing-due" title="Nothing is asked any more" />
      ) : (
        <AskedFlow
          jobNumber={number}
          person={person.id}
          productType={record.unit.productType}
          asks={asks}
          answers={answers}
          ranges={ranges}
          notes={notes}
        />
      )}
    </Page>
  );
}
