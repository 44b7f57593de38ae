import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { mayOpen } from "@/app/_people/may-open";
import { DefinitionList } from "@/app/_ui/definition-list";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadHeldRow } from "@/db/queries/held-row";
import { PutBack } from "../left-out";
import { LeaveOut } from "../mend-cell";
import { MendForm } from "../mend-form";
import { RowCells } from "./row-cells";

export const metadata: Metadata = { title: "A row held back" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly batch: string; readonly row: string }>;
}

/** One held row, whole: every cell can be corrected. */
export default async function HeldRowPage({ params }: Props) {
  await mayOpen("/files/[batch]/held/[row]");
  const { batch, row } = await params;
  const [batchId, number] = [Number(batch), Number(row)];
  const known = Number.isSafeInteger(batchId) && Number.isSafeInteger(number);
  const held = known ? await readOnly((db) => loadHeldRow(db, batchId, number)) : undefined;
  if (held === undefined) notFound();
  const { cells, problems, corrections, state, reason } = held;
  return (
    <Page
      above={<Link href={`/files/${batchId}/held`}>Rows of load {batchId} that are held back</Link>}
      title={`Row ${number}: ${titles[state]}`}
      margin={<p>The cells are shown as they stand in the file. What you write is kept beside them.</p>}
    >
      {reason !== null && <p>{reason}</p>}
      {state === "held" && (
        <Notice
          status="watch"
          title={problems.length === 1 ? "One thing to put right" : `${problems.length} things to put right`}
        >
          <ul>
            {problems.map(({ column, value, problem, fix }) => (
              <li key={`${column} ${problem}`}>
                {column === "" ? "The row" : column} {value !== "" && `“${value}” `}
                {problem}. {fix}
              </li>
            ))}
          </ul>
        </Notice>
      )}
      {state === "held" ? (
        <>
          <MendForm words="See what happens">
            <input type="hidden" name="batch" value={batchId} />
            <input type="hidden" name="row" value={number} />
            <RowCells cells={cells} corrections={corrections} wrong={new Set(problems.map(({ column }) => column))} />
          </MendForm>
          <LeaveOut batch={batchId} rows={[number]} />
        </>
      ) : (
        <>
          {state === "left_out" && <PutBack batch={batchId} rows={[number]} />}
          <DefinitionList items={Object.entries(cells).map(([term, detail]) => ({ term, detail }))} />
        </>
      )}
    </Page>
  );
}

const titles = {
  held: "waits to be corrected",
  refused: "left out by the load",
  mended: "corrected and taken in",
  left_out: "left out",
} as const;
