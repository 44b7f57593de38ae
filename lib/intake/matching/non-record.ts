import type { Matching } from "./matching";

/** Why a row of the table is no record at all; undefined where it may be one. */
export function nonRecord(
  columns: Matching["columns"],
  header: readonly string[],
): (cells: readonly string[]) => string | undefined {
  const names = header.map(plain);
  const keyPlace = columns.findIndex(({ target }) => target !== undefined && rowKeys.has(target));
  return (cells) => {
    let filled = 0;
    let first = -1;
    let alike = 0;
    for (let place = 0; place < cells.length; place++) {
      const cell = cells[place] ?? "";
      if (cell === "" || cell.trim() === "") continue;
      filled++;
      if (first < 0) first = place;
      const name = names[place];
      if (name !== undefined && name !== "" && name.length === cell.trim().length && name === plain(cell)) alike++;
    }
    if (filled === 0) return "Every cell is blank.";
    if (alike >= 2 && alike * 2 > filled) return "The header again.";
    const text = (cells[first] ?? "").trim();
    const key = keyPlace < 0 ? "" : (cells[keyPlace] ?? "").trim();
    const named = key === "" || keyPlace === first;
    if (named && totals.test(text)) return `A row of totals: it begins with "${shortened(text)}".`;
    if (filled === 1 && header.length > 2 && named && (note.test(text) || looksSpoken(text)))
      return `A note, no record: its only cell says "${shortened(text)}".`;
    return undefined;
  };
}

const rowKeys: ReadonlySet<string> = new Set(["job_number", "part_number", "contract_number", "serial"]);

const totals =
  /^(?:grand |sub-?|report |page |column )?totals?(?:$|[\s:=(-])|^(?:sum|count|average|gesamt|summe|zwischensumme|gesamtsumme|totaal|totale|total general|somme|suma|sous-total|media|moyenne)(?:$|[\s:=(])/i;
const note =
  /^(?:\*|note\b|notes\b|report\b|generated\b|printed\b|exported\b|end of\b|page \d|run date\b|source\b|prepared\b|filter|criteria|records?:|rows?:|\d+ (?:rows?|records?|jobs?|items?)\b|©|confidential\b|seite \d|stand:)/i;

/** Several words, as a sentence has and a number has not. */
function looksSpoken(text: string): boolean {
  return text.split(/\s+/).length >= 3;
}

function plain(text: string): string {
  return text.trim().toLowerCase();
}

function shortened(text: string): string {
  return text.length <= 60 ? text : `${text.slice(0, 60)}…`;
}
