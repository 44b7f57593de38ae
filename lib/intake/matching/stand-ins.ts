// What programs and people write where they know nothing, and what spreadsheets write where they failed. Common
// practice, no source, except the errors, which are those of the spreadsheet formats (ECMA-376 part 1, 18.17.3; from memory).

const words: ReadonlySet<string> = new Set([
  "n/a",
  "na",
  "n.a.",
  "n.a",
  "#n/a",
  "none",
  "null",
  "nil",
  "(null)",
  "(blank)",
  "(none)",
  "blank",
  "unknown",
  "unk",
  "unkn",
  "not known",
  "not available",
  "not applicable",
  "not recorded",
  "not stated",
  "tbd",
  "tba",
  "?",
  "??",
  "???",
  "-",
  "--",
  "---",
  "–",
  "—",
  ".",
  "..",
  "x",
  "xx",
  "xxx",
  "xxxx",
  "not readable",
  "unreadable",
  "illegible",
  "missing",
  "no tag",
  "no serial",
  "no serial number",
  "no model",
  "no sn",
  "no label",
  "worn off",
  "unbekannt",
  "keine angabe",
  "k.a.",
  "k. a.",
  "inconnu",
  "inconnue",
  "sin datos",
  "desconocido",
  "sconosciuto",
  "onbekend",
  "desconhecido",
  "nan",
  "undefined",
]);

/** Whether the cell only says that nothing is known. */
export function standsForUnknown(text: string): boolean {
  return text.length <= 20 && words.has(text.toLowerCase());
}

/** An error that a formula left in the cell, as the spreadsheet shows it; also a cell too narrow for its number. */
export function formulaError(text: string): string | undefined {
  if (text.charCodeAt(0) !== 35) return undefined;
  if (/^#{3,}$/.test(text)) return text;
  return /^#(?:REF|DIV\/0|VALUE|NAME|NUM|NULL|SPILL|CALC|GETTING_DATA|WERT|BEZUG|ZAHL|VALEUR|NOM|NOMBRE|VALOR|¡VALOR|¿NOMBRE|¡REF)[!?]?$|^#N\/A$|^#NV$/i.test(
    text,
  )
    ? text
    : undefined;
}

/** Digits that people type to get past a field that must be filled in. */
export function isFillerNumber(text: string): boolean {
  const plain = text.replace(/[\s.-]/g, "");
  return plain.length >= 1 && /^(?:0+|9{5,}|1{6,}|x{3,}|12345(?:6(?:7(?:89?0?)?)?)?)$/i.test(plain);
}
