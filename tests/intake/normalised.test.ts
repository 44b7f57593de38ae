import { expect, test } from "vitest";
import { normalised } from "@/lib/domain/normalised";
import { minimalStandard } from "../minimal-standard";

/** By definition: compatible forms joined (Unicode Standard Annex 15, NFKC), upper case, letters and digits only. */
function byDefinition(text: string): string {
  const upper = text.normalize("NFKC").toUpperCase();
  return [...upper].filter((character) => /[\p{L}\p{N}]/u.test(character)).join("");
}

test("texts that need no joining of forms come out as by the definition", () => {
  const draw = minimalStandard(7);
  const characters = [..."ABYZabyz0189 -_/.~!\t\n\0\x1f\x7féÉßŉſKﬁ①Ⅻµªº²ıİ😀𝟘٣\u0301\u00a0\ud800"];
  const plain = characters.slice(0, 19);
  for (let round = 0; round < 4_000; round++) {
    const from = round % 2 === 0 ? characters : plain;
    const length = Math.floor(draw() * 9);
    const text = Array.from({ length }, () => from[Math.floor(draw() * from.length)]).join("");
    expect(normalised(text), JSON.stringify(text)).toBe(byDefinition(text));
  }
});
