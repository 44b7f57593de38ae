import type { Sheet } from "./sheet";

/** Stands where the font has no shape for a letter. */
const box = "□";

/**
 * Text that the font in hand can print. Control characters of pasted text become spaces, ends of lines stay; a letter
 * without a shape becomes a box and is remembered, so that the file can say so.
 */
export function clean({ doc, unprintable }: Sheet, text: string): string {
  const plain = text.replace(/\r\n?/g, "\n").replace(/[^\P{Cc}\n]/gu, " ");
  if (!beyondLatin.test(plain)) return plain;
  const font = fontOf(doc);
  return Array.from(plain, (letter) => {
    if (!beyondLatin.test(letter) || font.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0)) return letter;
    if (/\p{Default_Ignorable_Code_Point}/u.test(letter)) return "";
    unprintable.add(letter);
    return box;
  }).join("");
}

/** The sentence for the end of the file; undefined where every letter was printed. */
export function unprintableWords({ unprintable }: Sheet): string | undefined {
  if (unprintable.size === 0) return undefined;
  const named = [...unprintable]
    .slice(0, 8)
    .map((letter) => `U+${(letter.codePointAt(0) ?? 0).toString(16).toUpperCase()}`);
  const more = unprintable.size > named.length ? " and others" : "";
  return `Letters that this file’s fonts can’t draw stand as ${box} (${named.join(", ")}${more}). The claim’s JSON file holds the text whole.`;
}

/** Everything up to here is in each of the fonts. */
const beyondLatin = /[\u0180-\u{10ffff}]/u;

interface Shapes {
  readonly hasGlyphForCodePoint: (codePoint: number) => boolean;
}

/** pdfkit keeps its opened font in a property that its types leave out. */
function fontOf(doc: PDFKit.PDFDocument): Shapes {
  return (doc as unknown as { readonly _font: { readonly font: Shapes } })._font.font;
}
