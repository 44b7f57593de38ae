import { headerWords } from "./header-words";
import { shortForms } from "./short-forms";
import type { TargetField } from "./target-fields";

/** How much a header reads like the name of a column, 0 to 1. Both sides are spelt out before they are compared. */
export function headerSimilarity(header: string, field: TargetField): number {
  const words = plainHeader(header);
  if (words.length === 0) return 0;
  const phrases = phrasesOf(field);
  let best = 0;
  const joined = words.join("");
  for (const phrase of phrases) {
    if (phrase.weight <= best) continue;
    best = Math.max(best, phrase.weight * (joined === phrase.joined ? 1 : alike(words, phrase.words)));
  }
  return best;
}

/** A header as words: lower case, no accents, no marks, short forms spelt out. "Ser #" becomes serial, number. */
export function plainHeader(header: string): readonly string[] {
  const known = plainHeaders.get(header);
  if (known !== undefined) return known;
  const plain = header
    .replace(/([\p{Ll}\d])(\p{Lu})/gu, "$1 $2")
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/ß/g, "ss")
    .replace(/\b([a-z])\/([a-z])\b/g, "$1$2")
    .replace(/#|№|\bn[°º]/g, " number ")
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();
  const words =
    plain === ""
      ? []
      : plain
          .split(" ")
          .flatMap(parted)
          .flatMap(spelt)
          .filter((word, place, all) => word !== all[place - 1]);
  if (plainHeaders.size > 5_000) plainHeaders.clear(); // headers come from outside: no end of them may pile up
  plainHeaders.set(header, words);
  return words;
}

const plainHeaders = new Map<string, readonly string[]>();

interface Phrase {
  readonly words: readonly string[];
  readonly joined: string;
  readonly weight: number;
}

const phrasesByField = new Map<string, readonly Phrase[]>();

function phrasesOf(field: TargetField): readonly Phrase[] {
  const key = `${field.kind}:${field.column}`;
  const known = phrasesByField.get(key);
  if (known !== undefined) return known;
  const own = headerWords[key] ?? headerWords[field.column] ?? [];
  const all = [field.column, field.column.replace(/_on$/, " date"), ...own.flatMap((line) => line.split(", "))];
  const phrases = all.map((phrase) => {
    const [text = "", weight] = phrase.split(" = ");
    const words = plainHeader(text);
    return { words, joined: words.join(""), weight: weight === undefined ? 1 : Number(weight) };
  });
  phrasesByField.set(key, phrases);
  return phrases;
}

/** Words that most headers share say little when they are all that two phrases have in common. */
const weak: ReadonlySet<string> = new Set([
  "number",
  "date",
  "code",
  "name",
  "id",
  "type",
  "of",
  "the",
  "de",
  "unit",
  "on",
  "at",
  "job",
  "part",
  "service",
]);

/** How many words are in common, whatever their order; never as much as for the same words. */
function alike(a: readonly string[], b: readonly string[]): number {
  let shared = 0;
  let strong = 0;
  for (const word of a) {
    const share = Math.max(0, ...b.map((other) => sameWord(word, other)));
    shared += share;
    if (!weak.has(word)) strong += share;
  }
  if (strong === 0) return 0.3 * ((2 * shared) / (a.length + b.length));
  return 0.86 * Math.min(1, (2 * shared) / (a.length + b.length));
}

function sameWord(a: string, b: string): number {
  if (a === b) return 1;
  const [short, long] = a.length < b.length ? [a, b] : [b, a];
  if (short.length >= 4 && long.startsWith(short)) return 0.85;
  return 0;
}

/** "jobno" is job and number; whole words such as "casino" are not taken apart, since "casi" is no word of a header here. */
function parted(word: string): readonly string[] {
  const found =
    /^(job|serial|ser|model|part|order|invoice|contract|ticket|case|call|work|repair|purchase|install|delivery|sale|completion|completed|close|closed|labou?r|trip|unit|brand|product|symptom|cause|tech|line|list|visit)(order)?(no|nr|num|number|date|code|id|name|type|hours|hrs|minutes|min|amount|cost|charge|price|desc)$/.exec(
      word,
    );
  return found === null ? [word] : found.slice(1).filter((part) => part !== undefined);
}

function spelt(word: string): readonly string[] {
  return (shortForms.get(word) ?? word).split(" ");
}
