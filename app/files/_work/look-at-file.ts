import { readOnly } from "@/db/client";
import { loadIntakeSetting } from "@/db/queries/intake-setting";
import { recallMatching, recallWords } from "@/db/queries/recall-matching";
import { guessMatching, type MatchingGuess } from "@/lib/intake/matching/guess-matching";
import type { Matching } from "@/lib/intake/matching/matching";
import { lookAtTable } from "@/lib/intake/tables/look-at-table";
import { isSameForm } from "@/lib/intake/tables/same-form";
import { matchingAsSaid, type SaidNotation } from "../_draft/as-said";
import { keepNotes, type OpenDraft } from "../_draft/open-draft";
import { openQuestionsOf } from "../_draft/open-questions-of";
import { isDocumentOfOurs, isTableOfOurs } from "../_draft/ours";
import { seenTable } from "../_draft/seen-table";
import { contentOf } from "../uploads";
import { checkRows } from "./check-rows";
import type { WorkLine } from "./do-task";
import { rowsToGuessBy } from "./rows-to-guess-by";

/** Looks at what was sent: its form, some of its rows, and what its columns may be. A file that leaves nothing open is checked at once. */
export async function lookAtFile(draft: OpenDraft, line: WorkLine): Promise<void> {
  const { draftId, notes } = draft;
  const path = contentOf(draftId);
  const forgotten = { checked: undefined, broken: undefined, unreadable: undefined };
  line.onProgress({ words: "Reading the file", done: 0, total: undefined });
  if (await isDocumentOfOurs(path)) {
    await keepNotes(draftId, { ...forgotten, ours: true });
    return checkRows({ ...draft, notes: { ...notes, ...forgotten, ours: true } }, line);
  }
  const looked = await lookAtTable(path, notes.wishes, {
    onProgress: (done) => line.onProgress({ words: "Reading the file", done, total: undefined }),
    signal: line.signal,
  });
  if (!looked.ok) return keepNotes(draftId, { ...forgotten, unreadable: looked.problems });
  const { look } = looked;
  const seen = seenTable(look);
  if (isTableOfOurs(look)) {
    await keepNotes(draftId, { ...forgotten, ours: true, seen });
    return checkRows({ ...draft, notes: { ...notes, ...forgotten, ours: true, seen } }, line);
  }
  const { setting, recalled, words } = await readOnly(async (db) => ({
    setting: await loadIntakeSetting(db, undefined),
    recalled: await recallMatching(db, look.header),
    words: await recallWords(db),
  }));
  const rows = await rowsToGuessBy(path, look.form, look.rows, line);
  const guess = guessMatching(
    { header: look.header, rows },
    { ...setting, remembered: recalled.kind === "none" ? undefined : recalled.matching, rememberedWords: words },
  );
  const { matching } = guess;
  const known = recalled.kind === "same" && isSameForm(recalled.form, look.form);
  const said = known ? notationOf(recalled.matching, guess) : notes.said;
  const now = { ...forgotten, ours: false, seen, guess, said };
  // A word that nobody has matched yet holds its rows, where it is seen and can be said: no reason to begin anew.
  const nothingOpen = known && openQuestionsOf(matching, guess, said).every(({ about }) => about === "words");
  const change = { form: look.form, matching: matchingAsSaid(matching, said) };
  await keepNotes(draftId, now, { step: nothingOpen ? "check" : "look", ...change });
  if (nothingOpen) await checkRows({ ...draft, ...change, notes: { ...notes, ...now } }, line);
}

/** Where this file can't tell, what was said of the last one with its header still holds. */
function notationOf(
  before: Matching,
  { dateOrder, decimalMark, labourUnit, dayNumbersFrom }: MatchingGuess,
): SaidNotation {
  return {
    ...("question" in dateOrder && { dateOrder: before.dateOrder }),
    ...("question" in decimalMark && { decimalMark: before.decimalMark }),
    ...("question" in labourUnit && { labourUnit: before.labourUnit }),
    ...(dayNumbersFrom !== undefined && "question" in dayNumbersFrom && { dayNumbersFrom: before.dayNumbersFrom }),
  };
}
