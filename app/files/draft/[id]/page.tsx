import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import { mayOpen } from "@/app/_people/may-open";
import { Page } from "@/app/_ui/page";
import { DraftGone } from "../../_components/draft-gone";
import { Steps } from "../../_components/steps";
import { openDraft } from "../../_draft/open-draft";
import { addressOf, onwardFrom } from "../../_draft/where-it-stands";
import { workOn } from "../../_work/file-work";
import type { FileTask } from "../../_work/work-state";
import { WatchWork } from "./watch-work";

export const metadata: Metadata = { title: "A file on its way in" };
export const dynamic = "force-dynamic";

interface Props {
  readonly params: Promise<{ readonly id: string }>;
}

/** Where the file stands: the work in hand with its progress, or the step that a person has to take. */
export default async function DraftPage({ params }: Props) {
  await mayOpen("/files/draft/[id]");
  const { id } = await params;
  const draft = await openDraft(id);
  const work = workOn(id);
  if (work === undefined) {
    if (draft === undefined) return <DraftGone />;
    redirect(onwardFrom(draft));
  }
  return (
    <Page
      above={<Link href="/files">Files in</Link>}
      title={`${titles[work.task]} ${draft?.fileName ?? "the file"}`}
      margin={<Basis task={work.task} />}
    >
      <Steps at={work.task === "look" ? "look" : work.task === "check" ? "rows" : "add"} hrefs={{}} />
      <WatchWork address={addressOf(id)} first={work.progress} />
    </Page>
  );
}

const titles: Readonly<Record<FileTask, string>> = {
  look: "Looking at",
  check: "Checking every row of",
  add: "Adding",
};

function Basis({ task }: { readonly task: FileTask }) {
  return (
    <>
      <p>This goes on when you leave this page; it stands under Files in.</p>
      {task === "add" ? (
        <p>Stopped, nothing of the file stays: a load is in whole or not at all.</p>
      ) : (
        <p>Nothing has been added yet.</p>
      )}
    </>
  );
}
