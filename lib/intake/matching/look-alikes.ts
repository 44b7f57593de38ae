import { normalised } from "@/lib/domain/normalised";

/** Letters and digits that are taken for each other on worn plates and in handwriting. Common practice, no source. */
const twins: ReadonlyMap<string, string> = new Map([
  ["O", "0"],
  ["0", "O"],
  ["I", "1"],
  ["1", "I"],
  ["S", "5"],
  ["5", "S"],
  ["B", "8"],
  ["8", "B"],
]);

/** Numbers on file that differ from this one in at most two such characters; for offering, never for applying. */
export function lookAlikes(text: string, isKnown: (normalisedNumber: string) => boolean): readonly string[] {
  const plain = normalised(text);
  const places = [...plain].flatMap((letter, place) => (twins.has(letter) ? [place] : []));
  const found = places.map((place) => swapped(plain, [place])).filter(isKnown);
  if (found.length > 0) return found;
  return places.flatMap((one, index) =>
    places
      .slice(index + 1)
      .map((other) => swapped(plain, [one, other]))
      .filter(isKnown),
  );
}

function swapped(text: string, places: readonly number[]): string {
  return [...text].map((letter, place) => (places.includes(place) ? (twins.get(letter) ?? letter) : letter)).join("");
}
