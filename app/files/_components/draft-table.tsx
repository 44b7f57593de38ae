import Link from "next/link";
import { Button } from "@/app/_ui/button";
import { type Column, Table } from "@/app/_ui/table";
import { formatBytes } from "@/lib/format/format-bytes";
import { formatCounted } from "@/lib/format/format-count";
import type { OpenDraft } from "../_draft/open-draft";
import { addressOf, standingWords, whereItStands } from "../_draft/where-it-stands";
import { workOn } from "../_work/file-work";
import type { FileTask } from "../_work/work-state";
import { dropFile } from "../actions";

interface Props {
  readonly drafts: readonly OpenDraft[];
}

/** Files that were chosen and are not yet in, where each stands, and how to go on. */
export function DraftTable({ drafts }: Props) {
  return (
    <Table
      caption={`${formatCounted(drafts.length, "file")} chosen and not yet added`}
      columns={columns}
      rows={drafts}
      rowKey={({ draftId }) => draftId}
    />
  );
}

const workWords: Readonly<Record<FileTask, string>> = {
  look: "is being looked at",
  check: "rows are being checked",
  add: "is being added",
};

const columns: readonly Column<OpenDraft>[] = [
  {
    key: "file",
    head: "File",
    cell: ({ fileName }) => fileName,
  },
  { key: "size", head: "Size", kind: "number", wideOnly: true, cell: ({ fileBytes }) => formatBytes(fileBytes) },
  {
    key: "changed",
    head: "Last touched",
    wideOnly: true,
    cell: ({ updatedAt }) => updatedAt.slice(0, 16).replace("T", " "),
  },
  {
    key: "stands",
    head: "Stands at",
    cell: (draft) => {
      const work = workOn(draft.draftId);
      return work === undefined ? standingWords[whereItStands(draft)] : workWords[work.task];
    },
  },
  {
    key: "acts",
    head: "Go on or drop",
    cell: (draft) => <Acts draft={draft} />,
  },
];

function Acts({ draft: { draftId, fileName } }: { readonly draft: OpenDraft }) {
  return (
    <form action={dropFile} className="cluster">
      <Link href={addressOf(draftId)}>
        Go on<span className="only-heard"> with {fileName}</span>
      </Link>
      <input type="hidden" name="draft" value={draftId} />
      <Button weight="plain">
        Drop<span className="only-heard"> {fileName}</span>
      </Button>
    </form>
  );
}
