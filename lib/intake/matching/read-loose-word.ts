import type { KnownWords } from "./known-words";
import { asItStands, held, type LooseReading, leftBlank, rewritten } from "./loose-reading";
import { anyOtherWord } from "./matching";
import { formulaError, standsForUnknown } from "./stand-ins";
import { plainWord } from "./trade-words";

/** Reads one column of words: by the matching's own list first, then by our words and their names. */
export function wordReader(
  given: Readonly<Record<string, string>> | undefined,
  known: KnownWords,
  { blankSaysUnknown }: { readonly blankSaysUnknown: boolean },
): (text: string) => LooseReading {
  const listed = new Map(Object.entries(given ?? {}).map(([word, ours]) => [word.trim().toLowerCase(), ours]));
  const other = listed.get(anyOtherWord);
  return (text) => {
    const plain = text.trim();
    if (plain === "") return asItStands("");
    const ours = listed.get(plain.toLowerCase());
    if (ours !== undefined) return ours === plain ? asItStands(plain) : matched(ours, plain);
    if (known.names.has(plain)) return asItStands(plain);
    const own = known.own.get(plainWord(plain));
    if (own !== undefined) return rewritten(own, `"${plain}" is our ${own}.`);
    if (blankSaysUnknown && formulaError(plain) !== undefined)
      return leftBlank(`${plain} is a spreadsheet's error, not a value.`);
    if (other !== undefined) return matched(other, plain);
    if (blankSaysUnknown && standsForUnknown(plain)) return leftBlank(`"${plain}" stands for unknown.`);
    return held(
      "is a word that has no match yet",
      "Say under Match columns what it means; every row with this word then follows.",
    );
  };
}

function matched(ours: string, plain: string): LooseReading {
  return rewritten(ours, ours === "" ? `"${plain}" was matched to nothing.` : `"${plain}" was matched to ${ours}.`);
}
