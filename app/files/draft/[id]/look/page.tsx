import type { Metadata } from "next";
import Link from "next/link";
import { mayOpen } from "@/app/_people/may-open";
import { Button } from "@/app/_ui/button";
import { ButtonLink } from "@/app/_ui/button-link";
import { Notice } from "@/app/_ui/notice";
import { Page } from "@/app/_ui/page";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { BrokenWork } from "../../../_components/broken-work";
import { DraftGone } from "../../../_components/draft-gone";
import { SeenRows } from "../../../_components/seen-rows";
import { Steps } from "../../../_components/steps";
import { enterStep } from "../../../_draft/enter-step";
import type { OpenDraft } from "../../../_draft/open-draft";
import { stepHrefs } from "../../../_draft/step-hrefs";
import { keepLook } from "./actions";
import { AskedFields } from "./asked-fields";
import { FormFields } from "./form-fields";
import styles from "./look.module.css";
import { AskedNotation, NotationFields } from "./notation-fields";

export const metadata: Metadata = { title: "Look" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly id: string }>;
}

export default async function LookPage({ params }: Props) {
  await mayOpen("/files/draft/[id]/look");
  const draft = await enterStep((await params).id);
  if (draft === undefined) return <DraftGone />;
  return (
    <Page above={<Link href="/files">Files in</Link>} title={findingOf(draft)} margin={<Basis />} wide>
      <Steps at="look" hrefs={stepHrefs(draft)} />
      <BrokenWork broken={draft.notes.broken} />
      <Unreadable draft={draft} />
      <HowItIsRead draft={draft} />
    </Page>
  );
}

function HowItIsRead({ draft: { draftId, notes } }: { readonly draft: OpenDraft }) {
  const { seen, guess } = notes;
  if (seen === undefined) return null;
  return (
    <>
      <form action={keepLook} className="stack">
        <input type="hidden" name="draft" value={draftId} />
        <AskedFields seen={seen} notes={notes} />
        {guess !== undefined && <AskedNotation guess={guess} notes={notes} />}
        <div className={styles.fields}>
          <FormFields seen={seen} />
          {guess !== undefined && <NotationFields guess={guess} notes={notes} />}
        </div>
        <div className="cluster">
          {notes.unreadable === undefined && (
            <Button name="onward" value="on">
              Match columns
            </Button>
          )}
          <Button weight="plain" name="onward" value="again" unchecked>
            Read it again so
          </Button>
        </div>
      </form>
      {seen.unreadRows > 0 && (
        <p>{formatCounted(seen.unreadRows, "row")} can’t be split into cells; they are held back with their text.</p>
      )}
      <SeenRows seen={seen} />
    </>
  );
}

function Unreadable({ draft: { notes } }: { readonly draft: OpenDraft }) {
  if (notes.unreadable === undefined) return null;
  return (
    <Notice status="act-now" title="This file can’t be loaded">
      {notes.unreadable.map(({ row, problem, fix }) => (
        <p key={`${row} ${problem}`}>
          {row !== undefined && `Row ${row}: `}
          {problem} {fix}
        </p>
      ))}
      <p>
        <ButtonLink href="/files/new">Choose another file</ButtonLink>
      </p>
    </Notice>
  );
}

function findingOf({ fileName, notes: { seen, unreadable } }: OpenDraft): string {
  if (seen === undefined || unreadable !== undefined) return `${fileName} can’t be loaded`;
  return `${fileName}: ${formatCounted(seen.rows, "row")} under ${formatCount(seen.header.length)} columns`;
}

function Basis() {
  return (
    <>
      <p>Nothing has been added yet, and nothing of the file is changed by how it is read.</p>
      <p>
        Row numbers are those that a spreadsheet shows. Each way of reading is a guess with its reason; change it where
        it is wrong. Where the file can’t tell, you are asked.
      </p>
    </>
  );
}
