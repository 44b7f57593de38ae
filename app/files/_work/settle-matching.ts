import { readOnly } from "@/db/client";
import { loadIntakeSetting } from "@/db/queries/intake-setting";
import type { ColumnGuess } from "@/lib/intake/matching/guess-columns";
import { guessMatching, type MatchingGuess } from "@/lib/intake/matching/guess-matching";
import type { Matching } from "@/lib/intake/matching/matching";
import { matchingAsSaid } from "../_draft/as-said";
import type { OpenDraft } from "../_draft/open-draft";
import { openQuestionsOf } from "../_draft/open-questions-of";
import { contentOf } from "../uploads";
import type { WorkLine } from "./do-task";
import { rowsToGuessBy } from "./rows-to-guess-by";

/** A matching that a person has gone through, with what is known about its columns. */
export interface Settled {
  readonly matching: Matching;
  readonly guess: MatchingGuess;
  /** Something has to be answered that was not asked before. */
  readonly mustAsk: boolean;
}

/** Looks again through the columns that were matched otherwise than guessed: their words and their notation are now of interest. */
export async function settleMatching(draft: OpenDraft, line: WorkLine): Promise<Settled | undefined> {
  const { form, matching, notes } = draft;
  const { guess, seen, said } = notes;
  if (form === undefined || matching === undefined || guess === undefined || seen === undefined) return undefined;
  if (matching.kind === guess.matching.kind && sameTargets(matching, guess.matching))
    return { matching, guess, mustAsk: blocking(matching, guess, draft, guess).length > 0 };
  const setting = await readOnly((db) => loadIntakeSetting(db, undefined));
  const rows = await rowsToGuessBy(contentOf(draft.draftId), form, seen.rows, line);
  const look = { header: seen.header, rows };
  if (matching.kind !== guess.matching.kind) {
    const fresh = guessMatching(look, { ...setting, kind: matching.kind });
    return { matching: matchingAsSaid(fresh.matching, said), guess: fresh, mustAsk: true };
  }
  const again = guessMatching(look, { ...setting, kind: matching.kind, remembered: matching });
  const words = { ...again.matching.words, ...matching.words };
  const settled = matchingAsSaid(
    { ...again.matching, words, constants: matching.constants, rowIs: matching.rowIs },
    said,
  );
  const told: MatchingGuess = {
    ...again,
    matching: settled,
    columns: again.columns.map((column, place) => toldColumn(column, guess.columns[place])),
  };
  return { matching: settled, guess: told, mustAsk: blocking(settled, told, draft, guess).length > 0 };
}

/** Words that were shown and left open hold their rows, as a person has chosen; words not yet shown are asked first. */
function blocking(matching: Matching, guess: MatchingGuess, { notes: { said } }: OpenDraft, before: MatchingGuess) {
  const shown = new Set(before.words.map(({ target }) => target));
  return openQuestionsOf(matching, guess, said).filter(({ about, target }) => about !== "words" || !shown.has(target));
}

function sameTargets(a: Matching, b: Matching): boolean {
  return a.columns.every(({ target }, place) => target === b.columns[place]?.target);
}

function toldColumn(column: ColumnGuess, before: ColumnGuess | undefined): ColumnGuess {
  if (before !== undefined && before.target === column.target) return before;
  return {
    ...column,
    reason: column.target === undefined ? "You left it unused. It is kept in the raw row." : "You chose it.",
  };
}
