import Link from "next/link";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { day } from "@/lib/calendar/day";
import { formatCounted } from "@/lib/format/format-count";
import { formatPlainDay } from "@/lib/format/format-day";
import type { OpenDraft } from "../../../_draft/open-draft";
import { checkAgain, leaveIt } from "./actions";

/** Where there is no dry run to show: the file is in already, cannot be read, or was changed since. */
export function NotChecked({ draft: { draftId, notes } }: { readonly draft: OpenDraft }) {
  const { checked, unreadable } = notes;
  if (checked?.kind === "loaded before")
    return (
      <>
        <Notice
          status="note"
          title={`You loaded this file on ${formatPlainDay(day(checked.addedAt.slice(0, 10)))}; all ${formatCounted(checked.rows, "row")} are here`}
        >
          <p>
            <Link href={`/files/${checked.batchId}`}>See load {checked.batchId}</Link>
          </p>
        </Notice>
        <form action={leaveIt}>
          <input type="hidden" name="draft" value={draftId} />
          <Button weight="plain">Put the copy away</Button>
        </form>
      </>
    );
  return (
    <>
      {unreadable !== undefined && (
        <Notice status="act-now" title="This file can’t be loaded">
          {unreadable.map(({ row, problem, fix }) => (
            <p key={`${row} ${problem}`}>
              {row !== undefined && `Row ${row}: `}
              {problem} {fix}
            </p>
          ))}
        </Notice>
      )}
      <form action={checkAgain}>
        <input type="hidden" name="draft" value={draftId} />
        <Button>Check rows</Button>
      </form>
    </>
  );
}
