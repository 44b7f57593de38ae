import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { mayOpen } from "@/app/_people/may-open";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { type Column, Table } from "@/app/_ui/table";
import { readOnly } from "@/db/client";
import { loadJobFields } from "@/db/queries/job-fields";
import { editableFields } from "@/db/writes/edit-job-field";
import { fieldInWords } from "../field-in-words";
import { EditForm } from "./edit-form";
import { inputOf } from "./input-of";

export const metadata: Metadata = { title: "Set a field" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly number: string }>;
  readonly searchParams: Promise<{
    readonly field?: string | readonly string[];
    /** What it should say, to begin with. */
    readonly text?: string | readonly string[];
    readonly kept?: string;
  }>;
}

interface Line {
  readonly field: string;
  readonly text: string;
  readonly href: string;
}

/** Every field of a job with what it says; one at a time is set, with who and why. */
export default async function EditJobPage({ params, searchParams }: Props) {
  await mayOpen("/jobs/[number]/edit");
  const number = decodeURIComponent((await params).number);
  const path = `/jobs/${encodeURIComponent(number)}`;
  const { field: asked, text, kept } = await searchParams;
  const job = await readOnly((db) => loadJobFields(db, number));
  if (job === undefined) notFound();
  const field = typeof asked === "string" && editableFields.includes(asked) ? asked : undefined;
  const shown = (name: string) => {
    const text = job.cells[name] ?? "";
    return inputOf(name, job).choices?.find(({ value }) => value === text)?.name ?? text;
  };
  const lines = editableFields.map(
    (name): Line => ({ field: name, text: shown(name), href: `${path}/edit?field=${name}` }),
  );
  return (
    <Page
      above={<Link href={path}>Job {number}</Link>}
      title={
        field === undefined ? `Which field of job ${number} is to be set?` : `${fieldInWords(field)} of job ${number}`
      }
      margin={<Basis path={path} />}
    >
      {kept !== undefined && editableFields.includes(kept) && (
        <Notice status="fine" title={`${fieldInWords(kept)} is set`}>
          <p>
            Counts and covers follow. Files no longer change it; where one says otherwise, you are asked.{" "}
            <Link href={`${path}/history`}>See its history</Link>
          </p>
        </Notice>
      )}
      {field !== undefined && (
        <EditForm
          key={field}
          jobNumber={number}
          field={field}
          input={inputOf(field, job)}
          text={typeof text === "string" ? text : (job.cells[field] ?? "")}
        />
      )}
      <Table caption="Fields of the job" columns={columns} rows={lines} rowKey={(line) => line.field} />
    </Page>
  );
}

const columns: readonly Column<Line>[] = [
  { key: "field", head: "Field", cell: ({ field }) => fieldInWords(field) },
  {
    key: "text",
    head: "Says",
    cell: ({ text }) => (text === "" ? <span className="soft">blank</span> : text.slice(0, 200)),
  },
  {
    key: "set",
    head: "Set it",
    cell: ({ field, href }) => (
      <Link href={href}>
        Set<span className="only-heard"> {fieldInWords(field)}</span>
      </Link>
    ),
  },
];

function Basis({ path }: { readonly path: string }) {
  return (
    <>
      <p>
        What was written before, by whom and why, stays in the <Link href={`${path}/history`}>history</Link>.
      </p>
      <p>Serial, model and parts are not set here: they come with files, so that claims keep what was sent.</p>
    </>
  );
}
