import { expect, test } from "vitest";
import { NumbersOnFile } from "@/lib/intake/matching/numbers-on-file";
import { minimalStandard } from "../../minimal-standard";

const twins: Readonly<Record<string, string>> = { O: "0", 0: "O", I: "1", 1: "I", S: "5", 5: "S", B: "8", 8: "B" };

/** By definition: every spelling with one character exchanged, or else with two, and which of them are on file. */
function byTrying(number: string, onFile: ReadonlySet<string>): readonly string[] {
  const places = [...number].flatMap((letter, place) => (letter in twins ? [place] : []));
  const exchanged = (some: readonly number[]) =>
    [...number].map((letter, place) => (some.includes(place) ? twins[letter] : letter)).join("");
  const inOne = places.map((place) => exchanged([place])).filter((each) => onFile.has(each));
  if (inOne.length > 0) return inOne;
  const pairs = places.flatMap((one, index) => places.slice(index + 1).map((other) => [one, other]));
  return pairs.map(exchanged).filter((each) => onFile.has(each));
}

test("what looks alike is what trying every spelling finds, in the same order", () => {
  const draw = minimalStandard(20_251);
  const number = () => {
    const letters = draw() < 0.5 ? "O0I1S5B8" : "O0S5ABC79É";
    return Array.from({ length: 1 + Math.floor(draw() * 7) }, () => letters[Math.floor(draw() * letters.length)]).join(
      "",
    );
  };
  const numbers = Array.from({ length: 4_000 }, number);
  const onFile = new Set(numbers);
  const index = new NumbersOnFile(numbers);
  const found = { none: 0, one: 0, several: 0 };
  for (const asked of Array.from({ length: 6_000 }, number)) {
    const expected = byTrying(asked, onFile);
    expect(index.lookAlikes(asked), asked).toEqual(expected);
    expect(index.has(asked), asked).toBe(onFile.has(asked));
    found[expected.length === 0 ? "none" : expected.length === 1 ? "one" : "several"]++;
  }
  expect(Math.min(found.none, found.one, found.several)).toBeGreaterThan(300);
});

test("a number of hundreds of such characters is answered at once", () => {
  const long = "O".repeat(20_000);
  const index = new NumbersOnFile([`${long.slice(1)}0`, `0${long.slice(2)}0`, `000${long.slice(3)}`]);
  expect(index.lookAlikes(long)).toEqual([`${long.slice(1)}0`]);
  expect(index.lookAlikes("0".repeat(20_000))).toEqual([]);
});
