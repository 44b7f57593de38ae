import type { Catalogue } from "../intake-setting";
import type { Confidence } from "./guess-columns";
import { type CatalogueNames, type KnownWords, knownWords } from "./known-words";
import { anyOtherWord, type Matching, type TargetColumn } from "./matching";
import { standsForUnknown } from "./stand-ins";
import { targetFields } from "./target-fields";
import { plainWord } from "./trade-words";

export interface WordGuess {
  readonly target: TargetColumn;
  /** As it stands in the file. */
  readonly word: string;
  /** Rows that hold it. */
  readonly count: number;
  /** Blank: it says that nothing is known. Undefined: nothing of ours comes near. */
  readonly suggestion: string | undefined;
  readonly confidence: Exclude<Confidence, "not used">;
  readonly reason: string;
}

export interface WordMemory {
  readonly catalogue: Catalogue;
  readonly names?: CatalogueNames | undefined;
  /** By target column: words that were matched in earlier files, in lower case. */
  readonly remembered?: Matching["words"] | undefined;
}

/** Our words for every different word of the matched columns; most frequent first within a column. */
export function guessWords(
  { kind, columns }: Pick<Matching, "kind" | "columns">,
  rows: Iterable<{ readonly cells: readonly string[] }>,
  memory: WordMemory,
): readonly WordGuess[] {
  const wordColumns = columns.flatMap(({ target }, place) => {
    const field = targetFields(kind).find((each) => each.target === target);
    const known = field === undefined ? undefined : knownWords(field, memory.catalogue, memory.names);
    return field === undefined || known === undefined
      ? []
      : [{ place, target: field.target, known, counts: new Map<string, Counted>() }];
  });
  for (const { cells } of rows) for (const { place, counts } of wordColumns) count(cells[place], counts);
  return wordColumns.flatMap(({ target, known, counts }) =>
    [...counts.values()]
      .sort((a, b) => b.count - a.count)
      .map(({ word, count }) => ({
        target,
        word,
        count,
        ...suggested(word, target, known, memory.remembered?.[target] ?? {}),
      })),
  );
}

interface Counted {
  readonly word: string;
  count: number;
}

/** A column of words has few; one with more is no column of words, and the rest of it is left to the check of the rows. */
const mostWords = 2_000;

function count(cell: string | undefined, counts: Map<string, Counted>): void {
  const word = (cell ?? "").trim();
  if (word === "") return;
  const known = counts.get(word.toLowerCase());
  if (known !== undefined) known.count++;
  else if (counts.size < mostWords) counts.set(word.toLowerCase(), { word, count: 1 });
}

type Suggestion = Pick<WordGuess, "suggestion" | "confidence" | "reason">;

function suggested(
  word: string,
  target: TargetColumn,
  known: KnownWords,
  remembered: Readonly<Record<string, string>>,
): Suggestion {
  const before = remembered[word.toLowerCase()] ?? remembered[anyOtherWord];
  if (before !== undefined && (before === "" || known.names.has(before)))
    return { suggestion: before, confidence: "sure", reason: "Matched so in an earlier file." };
  const plain = plainWord(word);
  const own = known.names.has(word) ? word : known.own.get(plain);
  if (own !== undefined) return { suggestion: own, confidence: "sure", reason: "It is a word of ours." };
  const trade = known.trade.get(plain);
  if (trade !== undefined)
    return {
      suggestion: trade,
      confidence: "likely",
      reason: `Commonly written for ${known.names.get(trade) ?? trade}.`,
    };
  if (standsForUnknown(word) && target !== "status")
    return { suggestion: "", confidence: "likely", reason: "It stands for unknown." };
  const near = nearest(plain, known);
  if (near === undefined) return { suggestion: undefined, confidence: "guess", reason: "Nothing of ours comes near." };
  return { suggestion: near, confidence: "guess", reason: `Shares words with ${known.names.get(near) ?? near}.` };
}

/** The entry that shares most words, weighed by how much of both that is. */
function nearest(plain: string, { own, trade }: KnownWords): string | undefined {
  const words = new Set(plain.split(" ").filter((word) => word.length > 2));
  let best: { key: string; share: number } | undefined;
  for (const [phrase, key] of [...own, ...trade]) {
    const others = phrase.split(" ").filter((word) => word.length > 2);
    const shared = others.filter((word) => words.has(word)).length;
    const share = shared === 0 ? 0 : (2 * shared) / (others.length + words.size);
    if (share >= 0.4 && (best === undefined || share > best.share)) best = { key, share };
  }
  return best?.key;
}
