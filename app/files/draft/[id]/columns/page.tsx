import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import { mayOpen } from "@/app/_people/may-open";
import { Button } from "@/app/_ui/button";
import { Page } from "@/app/_ui/page";
import { readOnly } from "@/db/client";
import { loadIntakeSetting } from "@/db/queries/intake-setting";
import { formatCount } from "@/lib/format/format-count";
import { targetFields } from "@/lib/intake/matching/target-fields";
import { BrokenWork } from "../../../_components/broken-work";
import { DraftGone } from "../../../_components/draft-gone";
import { Steps } from "../../../_components/steps";
import { enterStep } from "../../../_draft/enter-step";
import { stepHrefs } from "../../../_draft/step-hrefs";
import { addressOf } from "../../../_draft/where-it-stands";
import { columnLines, wordLists } from "./column-lines";
import { ColumnsForm } from "./columns-form";
import { ConstantFields } from "./constant-fields";
import { type ColumnLine, MatchTable } from "./match-table";
import { StillOpen } from "./still-open";
import { WhatRowsAre } from "./what-rows-are";
import { WordTable } from "./word-table";

export const metadata: Metadata = { title: "Match columns" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly id: string }>;
}

export default async function ColumnsPage({ params }: Props) {
  await mayOpen("/files/draft/[id]/columns");
  const draft = await enterStep((await params).id);
  if (draft === undefined) return <DraftGone />;
  const { draftId, fileName, matching, notes } = draft;
  const { guess } = notes;
  if (matching === undefined || guess === undefined) redirect(addressOf(draftId, "look"));
  const { catalogue } = await readOnly((db) => loadIntakeSetting(db, undefined));
  const lines = columnLines(matching, guess);
  const lists = wordLists(matching, guess, catalogue);
  return (
    <Page
      above={<Link href="/files">Files in</Link>}
      title={`${fileName}: ${findingOf(lines)}`}
      margin={<Basis />}
      wide
    >
      <Steps at="columns" hrefs={stepHrefs(draft)} />
      <BrokenWork broken={notes.broken} />
      <StillOpen draft={draft} matching={matching} guess={guess} />
      <ColumnsForm>
        <input type="hidden" name="draft" value={draftId} />
        <WhatRowsAre matching={matching} guess={guess} />
        <MatchTable lines={lines} fields={targetFields(matching.kind)} />
        <ConstantFields matching={matching} catalogue={catalogue} />
        {lists.length > 0 && <h2>What their words mean</h2>}
        {lists.map((list) => (
          <WordTable key={list.target} list={list} />
        ))}
        <Button>Check rows</Button>
      </ColumnsForm>
    </Page>
  );
}

function findingOf(lines: readonly ColumnLine[]): string {
  const matched = lines.filter(({ target }) => target !== undefined).length;
  const doubtful = lines.filter(({ sureness }) => sureness === "likely" || sureness === "guess").length;
  const words = `${formatCount(matched)} of ${formatCount(lines.length)} columns matched`;
  return doubtful === 0 ? words : `${words}, ${formatCount(doubtful)} to look at`;
}

function Basis() {
  return (
    <>
      <p>
        Sure: the name says it, the values fit, and no other column comes near. Likely: worth one look. Guess: left
        empty until you choose. A column that is not used is kept in the raw row, never lost.
      </p>
      <p>What you settle here is remembered for the next file with the same header.</p>
    </>
  );
}
