import type { MatchingGuess } from "@/lib/intake/matching/guess-matching";
import type { Matching } from "@/lib/intake/matching/matching";
import { type OpenQuestion, openQuestions } from "@/lib/intake/matching/open-questions";
import type { SaidNotation } from "./as-said";

const answers: readonly { readonly about: OpenQuestion["about"]; readonly name: keyof SaidNotation }[] = [
  { about: "date order", name: "dateOrder" },
  { about: "decimal mark", name: "decimalMark" },
  { about: "labour unit", name: "labourUnit" },
  { about: "day numbers", name: "dayNumbersFrom" },
];

/** What is still open, after what a person has said. */
export function openQuestionsOf(matching: Matching, guess: MatchingGuess, said: SaidNotation): readonly OpenQuestion[] {
  const answered = new Set(answers.filter(({ name }) => said[name] !== undefined).map(({ about }) => about));
  const { columns, words, dateOrder, decimalMark, labourUnit, dayNumbersFrom } = guess;
  const open = openQuestions({
    matching,
    columns,
    words,
    decisions: { dateOrder, decimalMark, labourUnit, dayNumbersFrom },
  });
  return open.filter(({ about }) => !answered.has(about));
}
