import { shortened } from "../shortened";
import type { Matching } from "./matching";

/** Why a row of the table is no record at all; undefined where it may be one. */
export function nonRecord(
  columns: Matching["columns"],
  header: readonly string[],
): (cells: readonly string[]) => string | undefined {
  const names = header.map(plain);
  const keyPlace = columns.findIndex(({ target }) => target !== undefined && rowKeys.has(target));
  return (cells) => {
    const first = nextFilled(cells, 0);
    if (first < 0) return "Every cell is blank.";
    const text = (cells[first] ?? "").trim();
    if (text.length === names[first]?.length && isHeaderAgain(cells, names)) return "The header again.";
    const isKey = keyPlace === first || (cells[keyPlace] ?? "").trim() === "";
    if (!isKey) return undefined;
    if (totals.test(text)) return `A row of totals: it begins with "${shortened(text)}".`;
    const alone = header.length > 2 && nextFilled(cells, first + 1) < 0;
    if (alone && (note.test(text) || looksSpoken(text)))
      return `A note, no record: its only cell says "${shortened(text)}".`;
    return undefined;
  };
}

/** Place of the next cell that is not blank, or -1. */
function nextFilled(cells: readonly string[], from: number): number {
  for (let place = from; place < cells.length; place++) {
    const cell = cells[place] ?? "";
    if (cell.charCodeAt(0) > 32 && cell.charCodeAt(0) < 127) return place;
    if (cell !== "" && cell.trim() !== "") return place;
  }
  return -1;
}

/** Most of the filled cells, and at least two, say what their own header says. */
function isHeaderAgain(cells: readonly string[], names: readonly string[]): boolean {
  const filled = cells.filter((cell) => cell.trim() !== "").length;
  const alike = cells.filter((cell, place) => cell.trim() !== "" && plain(cell) === names[place]).length;
  return alike >= 2 && alike * 2 > filled;
}

const rowKeys: ReadonlySet<string> = new Set(["job_number", "part_number", "contract_number", "serial"]);

const totals =
  /^(?:grand |sub-?|report |page |column )?totals?(?:$|[\s:=(])|^(?:sum|count|average|gesamt|summe|zwischensumme|gesamtsumme|totaal|totale|total general|somme|suma|sous-total|media|moyenne)(?:$|[\s:=(])/i;
const note =
  /^(?:\*|note\b|notes\b|report\b|generated\b|printed\b|exported\b|end of\b|page \d|run date\b|source\b|prepared\b|filter|criteria|records?:|rows?:|\d+ (?:rows?|records?|jobs?|items?)\b|©|confidential\b|seite \d|stand:)/i;

/** Several words, as a sentence has and a number has not. */
function looksSpoken(text: string): boolean {
  return text.split(/\s+/).length >= 3;
}

function plain(text: string): string {
  return text.trim().toLowerCase();
}
