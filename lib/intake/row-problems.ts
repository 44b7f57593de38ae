import type { z } from "zod";
import { readDay } from "@/lib/calendar/day";
import type { IntakeSetting } from "./intake-setting";
import { type CellProblem, type Parsed, shownValue } from "./parsed";
import { rightCells } from "./right-cells";

export type Cells = Readonly<Record<string, string>>;

/** Reads the cells of one row; problems of the cells, of the words, and then of the row as a whole. */
export function readRow<Schema extends z.ZodObject, T>(
  schema: Schema,
  cells: Cells,
  setting: IntakeSetting,
  more: {
    /** Problems that need more than the cell itself, such as a word that the catalogue does not know. */
    readonly words: readonly CellProblem[];
    /** Cells that contradict each other; looked at once each is right by itself. */
    readonly contradictions: (row: z.output<Schema>, cells: Cells) => readonly CellProblem[];
    readonly value: (row: z.output<Schema>, setting: IntakeSetting) => T;
  },
): Parsed<T> {
  const right = rightCells(schema, cells);
  const read = right === undefined ? schema.safeParse(cells) : { success: true as const, data: right };
  if (!read.success)
    return { ok: false, problems: [...read.error.issues.map((issue) => cellProblem(issue, cells)), ...more.words] };
  const problems = [...more.words, ...more.contradictions(read.data, cells)];
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: more.value(read.data, setting) };
}

/** A word that is in the right notation but not in the list: the catalogue is data, so the schema cannot know it. */
export function unknownWords(
  cells: Cells,
  known: readonly {
    readonly column: string;
    readonly words: { has(word: string): boolean; keys(): Iterable<string> };
    readonly noun: string;
  }[],
): readonly CellProblem[] {
  const problems: CellProblem[] = [];
  for (const { column, words, noun } of known) {
    const word = (cells[column] ?? "").trim();
    if (word === "" || words.has(word) || !/^[a-z][a-z0-9_]{0,59}$/.test(word)) continue;
    const near = nearestWord(word, words.keys());
    const fix =
      near === undefined
        ? `Use the key of a ${noun} in the catalogue.`
        : `Did you mean ${near}? Otherwise use the key of a ${noun} in the catalogue.`;
    problems.push({ column, value: word, problem: `is not a ${noun} of the catalogue`, fix });
  }
  return problems;
}

/** Days that lie in the future cannot be on record. */
export function futureDays(cells: Cells, columns: readonly string[], { today }: IntakeSetting): readonly CellProblem[] {
  const problems: CellProblem[] = [];
  for (const column of columns) {
    const text = (cells[column] ?? "").trim();
    if (text <= today || readDay(text) === undefined) continue;
    const problem = `is later than today, ${today}`;
    problems.push({ column, value: text, problem, fix: "Write the day on which it happened." });
  }
  return problems;
}

/** The first day must not be after the second, where both are known. */
export function outOfOrder(
  cells: Cells,
  pairs: readonly (readonly [earlier: string, later: string])[],
): readonly CellProblem[] {
  const problems: CellProblem[] = [];
  for (const [earlier, later] of pairs) {
    const from = (cells[earlier] ?? "").trim();
    const to = (cells[later] ?? "").trim();
    // A month is compared as a month: made in 2024-03 and sold on 2024-03-02 may both be true.
    const length = Math.min(from.length, to.length);
    if (from === "" || to === "" || from.slice(0, length) <= to.slice(0, length)) continue;
    problems.push({
      column: later,
      value: to,
      problem: `is before ${earlier}, which is ${from}`,
      fix: "Correct whichever of the two is wrong.",
    });
  }
  return problems;
}

function cellProblem(issue: z.core.$ZodIssue, cells: Cells): CellProblem {
  const column = issue.path.join(".");
  const fix = issue.code === "custom" && typeof issue.params?.fix === "string" ? issue.params.fix : "Correct it.";
  return { column, value: shownValue(cells[column] ?? ""), problem: issue.message, fix };
}

/** The word of the list that is at most two letters away. */
function nearestWord(word: string, words: Iterable<string>): string | undefined {
  let best: { word: string; steps: number } | undefined;
  for (const candidate of words) {
    if (Math.abs(candidate.length - word.length) > 2) continue;
    const steps = lettersApart(word, candidate);
    if (steps <= 2 && (best === undefined || steps < best.steps)) best = { word: candidate, steps };
  }
  return best?.word;
}

function lettersApart(a: string, b: string): number {
  let above = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const swap = (above[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      row.push(Math.min((above[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, swap));
    }
    above = row;
  }
  return above[b.length] ?? 0;
}
