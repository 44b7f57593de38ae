import type { Gathered } from "./gather-rows";
import type { EncodingGuess } from "./guess-encoding";
import type { Looked, TableLook, TableQuestion } from "./look-at-table";

/** A look from what one pass has gathered, with what is known about the file's form. */
export function lookOf(
  { headerRow, guess, header, first, random, last, sample, rows, unreadRows, problem }: Gathered,
  known: Pick<TableLook, "form" | "reasons" | "questions" | "sheets">,
): Looked {
  if (problem !== undefined) return { ok: false, problems: [problem] };
  if (header === undefined)
    return {
      ok: false,
      problems: [
        { row: headerRow, problem: `Row ${headerRow} has no column names.`, fix: "Name the row that has them." },
      ],
    };
  const unsure: readonly TableQuestion[] =
    guess?.sure === false ? [{ about: "headerRow", question: "Which row holds the names of the columns?" }] : [];
  return {
    ok: true,
    look: {
      ...known,
      reasons: { ...known.reasons, ...(guess && { headerRow: guess.reason }) },
      questions: [...known.questions, ...unsure],
      header,
      first,
      random,
      last,
      sample,
      rows,
      unreadRows,
    },
  };
}

/** Asked where the bytes themselves do not decide. */
export function encodingQuestions(guess: EncodingGuess | undefined): readonly TableQuestion[] {
  if (guess === undefined || guess.samples.length === 0) return [];
  return [{ about: "encoding", question: "Which of the two readings is right?", samples: guess.samples }];
}
