import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { mayOpen } from "@/app/_people/may-open";
import { Button } from "@/app/_ui/button";
import { EmptyState } from "@/app/_ui/empty-state";
import { Field } from "@/app/_ui/field";
import { FilterForm } from "@/app/_ui/filter-form";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadHandJoin } from "@/db/queries/hand-join";
import { loadJobRecord, type StoredJob } from "@/db/queries/job-record";
import { loadLookAlikes, loadUnitList } from "@/db/queries/unit-list";
import { formatCount } from "@/lib/format/format-count";
import { undoJoin } from "./actions";
import { JoinForm } from "./join-form";

export const metadata: Metadata = { title: "Which unit it was" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly number: string }>;
  readonly searchParams: Promise<{ readonly serial?: string | readonly string[]; readonly said?: string }>;
}

const mostOffered = 20;

/** A job that came without a serial is joined to the unit that it was on; and the other way round, that is undone. */
export default async function JobUnitPage({ params, searchParams }: Props) {
  await mayOpen("/jobs/[number]/unit");
  const number = decodeURIComponent((await params).number);
  const { serial, said } = await searchParams;
  const words = typeof serial === "string" && serial.trim() !== "" ? serial.trim() : undefined;
  const found = await readOnly(async (db) => {
    const job = await loadJobRecord(db, number);
    return job && { job, join: await loadHandJoin(db, number) };
  });
  if (found === undefined) notFound();
  const { job, join } = found;
  return (
    <Page
      above={<Link href={`/jobs/${encodeURIComponent(number)}`}>Job {number}</Link>}
      title={findingOf(number, job)}
      margin={<Basis />}
    >
      {said === "sent" && (
        <Notice status="note" title="A claim on this job was sent">
          <p>What was sent names the unit as it was, so the job stays. Withdraw the claim first.</p>
        </Notice>
      )}
      {join !== undefined && (
        <form action={undoJoin} className="stack-tight">
          <input type="hidden" name="job" value={number} />
          <p>
            {join.by} joined it to this unit on {join.at.slice(0, 10)}: {join.reason}
          </p>
          <Button weight="plain">Undo this</Button>
        </form>
      )}
      {job.identified ? (
        join === undefined && <p>Its serial came with a file. A later file, or a correction there, can change it.</p>
      ) : (
        <Choose number={number} job={job} words={words} />
      )}
    </Page>
  );
}

function findingOf(number: string, { identified, record: { unit } }: StoredJob): string {
  return identified ? `Job ${number} is on serial ${unit.serial}` : `Job ${number} came without a serial`;
}

interface ChooseProps {
  readonly number: string;
  readonly job: StoredJob;
  readonly words: string | undefined;
}

async function Choose({ number, job: { record }, words }: ChooseProps) {
  const { maker, model, productType } = record.unit;
  const units =
    words === undefined
      ? []
      : await readOnly(async (db) => {
          const { rows } = await loadUnitList(db, words, { offset: 0, limit: mostOffered });
          return rows.length > 0 ? rows : await loadLookAlikes(db, words);
        });
  const fitting = units.filter((unit) => unit.productType === productType);
  return (
    <>
      <p>
        It was done on a {maker} {model}. Look the serial up on the paper or the photo of the plate, and find its unit.
      </p>
      <FilterForm action={`/jobs/${encodeURIComponent(number)}/unit`} words="Find the unit" submit="Find" open>
        <Field label="Serial, or part of it" name="serial" type="search" value={words} />
      </FilterForm>
      {words !== undefined && fitting.length === 0 && (
        <EmptyState kind="filtered-away" title={`No unit of this kind has ${words} in its serial`} />
      )}
      {fitting.length > 0 && (
        <JoinForm
          jobNumber={number}
          caption={`${formatCount(fitting.length)} that may be it`}
          units={fitting.map((unit) => ({ ...unit, fits: unit.model === model }))}
        />
      )}
    </>
  );
}

function Basis() {
  return (
    <>
      <p>
        Until its unit is known, a job hangs on a unit of its own, which is in no rate. Joined, it moves there with its
        parts, readings, photos and drafts of claims, and the counts follow.
      </p>
      <p>A file that brings the serial later joins it as well; taking that file back undoes it.</p>
    </>
  );
}
