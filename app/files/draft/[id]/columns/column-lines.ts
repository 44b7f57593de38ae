import type { Catalogue } from "@/lib/intake/intake-setting";
import type { MatchingGuess } from "@/lib/intake/matching/guess-matching";
import { knownWords } from "@/lib/intake/matching/known-words";
import { anyOtherWord, type Matching } from "@/lib/intake/matching/matching";
import { targetFields } from "@/lib/intake/matching/target-fields";
import { fieldName } from "../../../_components/field-name";
import type { ColumnLine } from "./match-table";
import type { WordList } from "./word-table";

/** One line for each column of the file. What was chosen otherwise than guessed says so. */
export function columnLines(matching: Matching, guess: MatchingGuess): readonly ColumnLine[] {
  return matching.columns.map(({ source, target }, place) => {
    const guessed = guess.columns[place];
    const line = { place, header: source, samples: guessed?.samples ?? [], target };
    if (guessed === undefined) return { ...line, sureness: "not used", reason: "" };
    const { confidence, reason } = guessed;
    if (target === guessed.target) return { ...line, sureness: confidence === "guess" ? "chosen" : confidence, reason };
    if (target !== undefined) return { ...line, sureness: "chosen", reason: "You chose it." };
    if (confidence !== "guess" || guessed.target === undefined)
      return { ...line, sureness: "not used", reason: "You left it unused. It is kept in the raw row." };
    return { ...line, sureness: "guess", reason: `Perhaps ${fieldName(guessed.target)}. ${reason}` };
  });
}

/** The words of each matched column that takes words of ours. */
export function wordLists(matching: Matching, guess: MatchingGuess, catalogue: Catalogue): readonly WordList[] {
  const matched = new Set(matching.columns.map(({ target }) => target));
  return targetFields(matching.kind).flatMap((field) => {
    const known = matched.has(field.target) ? knownWords(field, catalogue) : undefined;
    const found = guess.words.filter(({ target }) => target === field.target);
    if (known === undefined || found.length === 0) return [];
    const given = matching.words[field.target] ?? {};
    return [
      {
        target: field.target,
        choices: [...known.names].map(([value, name]) => ({ value, name })),
        rest: given[anyOtherWord],
        lines: found.map(({ word, count, suggestion, confidence, reason }) => ({
          word,
          rows: count,
          meaning: given[word.toLowerCase()] ?? (confidence === "sure" ? suggestion : undefined),
          reason:
            suggestion === undefined || confidence !== "guess"
              ? reason
              : `Perhaps ${known.names.get(suggestion) ?? suggestion}. ${reason}`,
        })),
      },
    ];
  });
}
