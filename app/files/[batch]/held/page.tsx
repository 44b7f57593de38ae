import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { mayOpen } from "@/app/_people/may-open";
import { EmptyState } from "@/app/_ui/empty-state";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadBatch } from "@/db/queries/batches";
import { formatCounted } from "@/lib/format/format-count";
import { alikeProblems, kindKey, kindsOfProblems } from "../../_components/alike-problems";
import { ProblemFilter } from "../../_components/problem-filter";
import { ProblemRows } from "../../_components/problem-rows";
import { LeftOut } from "./left-out";
import { MendCell } from "./mend-cell";

export const metadata: Metadata = { title: "Rows held back" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly batch: string }>;
  readonly searchParams: Promise<{ readonly problem?: string | readonly string[] }>;
}

/** The tray: rows of a load that wait to be corrected, taken in or left out. */
export default async function HeldPage({ params, searchParams }: Props) {
  await mayOpen("/files/[batch]/held");
  const number = Number((await params).batch);
  const found = Number.isSafeInteger(number) && number > 0 ? await readOnly((db) => loadBatch(db, number)) : undefined;
  if (found === undefined) notFound();
  const { batch, held, waiting } = found;
  const { problem } = await searchParams;
  const rows = held.filter(({ state }) => state === "held");
  const groups = alikeProblems(rows.flatMap(({ row, problems }) => problems.map((entry) => ({ ...entry, row }))));
  const shown =
    typeof problem === "string" && problem !== "" ? groups.filter((group) => kindKey(group) === problem) : groups;
  return (
    <Page
      above={<Link href={`/files/${number}`}>Load {number}</Link>}
      title={
        waiting.held === 0
          ? `No row of ${batch.fileName} waits`
          : `${formatCounted(waiting.held, "row of", "rows of")} ${batch.fileName} ${waiting.held === 1 ? "waits" : "wait"} to be corrected`
      }
      margin={<Basis left={waiting.left_out} mended={waiting.mended} />}
      wide
    >
      {waiting.held === 0 && <EmptyState kind="nothing-due" title="Every row is in or left out" />}
      {groups.length > 0 && (
        <>
          <ProblemFilter
            action={`/files/${number}/held`}
            kinds={kindsOfProblems(groups)}
            chosen={typeof problem === "string" ? problem : undefined}
          />
          <ProblemRows groups={shown} correction={(group) => <MendCell batch={number} group={group} />} />
        </>
      )}
      <LeftOut batch={number} rows={held.filter(({ state }) => state === "left_out")} />
      {rows.length < waiting.held && (
        <p className="soft">
          The first {formatCounted(rows.length, "row")} are shown; the others follow when these are done.
        </p>
      )}
    </Page>
  );
}

function Basis({ left, mended }: { readonly left: number; readonly mended: number }) {
  return (
    <>
      <p>Rows wait here as they stand in the file, and are in no number.</p>
      <p>
        Corrected rows are taken in as a load of their own that follows the first; the raw cell stays beside the
        correction. {formatCounted(mended, "row was", "rows were")} corrected so far,{" "}
        {formatCounted(left, "row was", "rows were")} left out.
      </p>
    </>
  );
}
