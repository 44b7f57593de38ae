/** A payer's words as they are remembered: in lower case, single blanks, without the numbers that differ from claim to claim. */
export function payerWords(text: string): string {
  return text
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[\p{L}]*\d[\p{L}\d./-]*/gu, "#")
    .replace(/\s+/g, " ")
    .trim();
}
