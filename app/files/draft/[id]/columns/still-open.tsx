import Link from "next/link";
import { Notice } from "@/app/_ui/notice";
import type { MatchingGuess } from "@/lib/intake/matching/guess-matching";
import type { Matching } from "@/lib/intake/matching/matching";
import type { OpenDraft } from "../../../_draft/open-draft";
import { openQuestionsOf } from "../../../_draft/open-questions-of";
import { addressOf } from "../../../_draft/where-it-stands";

interface Props {
  readonly draft: OpenDraft;
  readonly matching: Matching;
  readonly guess: MatchingGuess;
}

/** What has to be answered, or holds rows back while it is not. */
export function StillOpen({ draft, matching, guess }: Props) {
  const open = openQuestionsOf(matching, guess, draft.notes.said);
  if (open.length === 0) return null;
  return (
    <Notice status="watch" title={open.length === 1 ? "One thing is open" : `${open.length} things are open`}>
      <ul>
        {open.map(({ about, target, question, reason }) => (
          <li key={`${about} ${target}`}>
            {about === "words" ? <a href={`#words-${target}`}>{question}</a> : question} {reason}
            {(about === "words" && " Rows with a word left open are held back.") ||
              (about !== "needed column" && (
                <>
                  {" "}
                  <Link href={addressOf(draft.draftId, "look")}>Answer it under Look</Link>
                </>
              ))}
          </li>
        ))}
      </ul>
    </Notice>
  );
}
