import type { Paper } from "./pdf/sheet";

/** Countries whose printers hold Letter; the rest of the world prints on A4. Common practice, no source. */
const letterCountries: ReadonlySet<string> = new Set([
  "US",
  "CA",
  "MX",
  "PH",
  "CL",
  "CO",
  "VE",
  "GT",
  "CR",
  "DO",
  "PR",
]);

/** The paper of a territory, such as US-CA. */
export function paperOf(territory: string): Paper {
  return letterCountries.has(territory.slice(0, 2).toUpperCase()) ? "LETTER" : "A4";
}

/** What the address asks for (`?paper=a4`), or the shop's own. */
export function paperAsked(asked: string | null, own: Paper): Paper {
  if (asked === "letter") return "LETTER";
  return asked === "a4" ? "A4" : own;
}
