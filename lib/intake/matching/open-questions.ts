import { countOf } from "@/lib/calendar/day-words";
import { fileKindNames } from "../file-kinds";
import type { ColumnGuess } from "./guess-columns";
import type { Decision } from "./guess-date-order";
import type { WordGuess } from "./guess-words";
import { anyOtherWord, type Matching } from "./matching";
import { targetFields } from "./target-fields";

/** Something that only a person can answer, with the place where it is answered. */
export interface OpenQuestion {
  readonly about: "date order" | "decimal mark" | "labour unit" | "day numbers" | "needed column" | "words";
  /** Column of ours that it concerns; blank where it is the whole file. */
  readonly target: string;
  readonly question: string;
  readonly reason: string;
}

export interface Decisions {
  readonly dateOrder: Decision<unknown>;
  readonly decimalMark: Decision<unknown>;
  readonly labourUnit: Decision<unknown>;
  readonly dayNumbersFrom: Decision<unknown> | undefined;
}

export function openQuestions({
  matching,
  columns,
  words,
  decisions,
}: {
  readonly matching: Matching;
  readonly columns: readonly ColumnGuess[];
  readonly words: readonly WordGuess[];
  readonly decisions: Decisions;
}): readonly OpenQuestion[] {
  return [
    ...asked("date order", decisions.dateOrder),
    ...asked("decimal mark", decisions.decimalMark),
    ...asked("labour unit", decisions.labourUnit),
    ...(decisions.dayNumbersFrom === undefined ? [] : asked("day numbers", decisions.dayNumbersFrom)),
    ...lacking(matching, columns),
    ...openWords(matching, words),
  ];
}

function asked(about: OpenQuestion["about"], decision: Decision<unknown>): readonly OpenQuestion[] {
  return "question" in decision ? [{ about, target: "", question: decision.question, reason: decision.reason }] : [];
}

function lacking({ kind, columns, constants }: Matching, guesses: readonly ColumnGuess[]): readonly OpenQuestion[] {
  const filled = new Set([...columns.map(({ target }) => target), ...Object.keys(constants)]);
  return targetFields(kind)
    .filter(({ needed, target }) => needed && !filled.has(target))
    .map(({ target, description }) => {
      const offered = guesses.find((guess) => guess.target === target);
      return {
        about: "needed column",
        target,
        question: `Which column is ${target}?`,
        reason:
          offered === undefined
            ? `Every row of ${fileKindNames[kind].toLowerCase()} needs it: ${description} Match a column to it, or give one value for all rows.`
            : `Perhaps "${offered.source}". ${offered.reason}`,
      };
    });
}

function openWords({ words }: Matching, guesses: readonly WordGuess[]): readonly OpenQuestion[] {
  const open = new Map<string, WordGuess[]>();
  for (const guess of guesses) {
    const listed = words[guess.target] ?? {};
    if (guess.confidence !== "guess" || Object.hasOwn(listed, guess.word.toLowerCase()) || anyOtherWord in listed)
      continue;
    open.set(guess.target, [...(open.get(guess.target) ?? []), guess]);
  }
  return [...open].map(([target, list]) => ({
    about: "words",
    target,
    question: `${list.length === 1 ? "What does this word" : `What do these ${list.length} words`} mean for ${target}?`,
    reason: `${list
      .slice(0, 5)
      .map(({ word, count }) => `"${word}" on ${countOf(count, "row")}`)
      .join(", ")}${list.length > 5 ? " and more" : ""}.`,
  }));
}
