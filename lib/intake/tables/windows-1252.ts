/**
 * Bytes to text as the Encoding Standard reads them; every byte is a character. Not by TextDecoder: under this name
 * Node 20 decodes Latin-1, which turns the euro sign, dashes and curly quotation marks into control characters.
 */
export function decodeWindows1252(bytes: Buffer): string {
  return bytes
    .toString("latin1")
    .replaceAll(/[\u0080-\u009f]/g, (character) => high[character.charCodeAt(0) - 0x80] ?? "");
}

/** Bytes 80 to 9F. Source: WHATWG Encoding Standard, index windows-1252. */
const high =
  "\u20ac\u0081\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\u008d\u017d\u008f" +
  "\u0090\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\u009d\u017e\u0178";
