import { mostColumns } from "../limits";
import type { CellMark, SourceItem } from "../source-row";
import type { Encoding } from "../table-form";
import { objectLines } from "./object-lines";
import type { LineCell } from "./parse-object";

/** The keys of all objects, in the order in which they first appear. */
export async function lineKeys(
  path: string,
  encoding: Encoding,
  onLine: () => void = () => {},
): Promise<readonly string[]> {
  const keys = new Set<string>();
  for await (const line of objectLines(path, encoding)) {
    onLine();
    if ("kind" in line || !line.reading.ok) continue;
    for (const key of line.reading.cells.keys()) if (keys.size < mostColumns) keys.add(key);
  }
  return [...keys];
}

/** Objects as rows with a cell for each key; a line that is none, or has more keys than we take, is handed out as it stands. */
export async function* lineRows(path: string, encoding: Encoding, keys: readonly string[]): AsyncGenerator<SourceItem> {
  const places = new Map(keys.map((key, place) => [key, place]));
  for await (const line of objectLines(path, encoding)) {
    if ("kind" in line) {
      yield line;
      return;
    }
    const { row, raw, reading } = line;
    if (!reading.ok) {
      const { ok: _, ...problem } = reading;
      yield { kind: "unread", row, raw, problem: { row, ...problem } };
    } else yield rowOf(line.row, raw, reading.cells, places);
  }
}

function rowOf(
  row: number,
  raw: string,
  found: ReadonlyMap<string, LineCell>,
  places: ReadonlyMap<string, number>,
): SourceItem {
  const cells = Array.from(places, () => "");
  const marks = new Map<number, CellMark>();
  for (const [key, { text, number }] of found) {
    const place = places.get(key);
    if (place === undefined) {
      const problem = `The file has more than ${mostColumns} different keys, ${key} among them.`;
      return {
        kind: "unread",
        row,
        raw,
        problem: { row, column: key, problem, fix: "Use the same keys on every line." },
      };
    }
    cells[place] = text;
    if (number) marks.set(place, { kind: "number", stored: text });
  }
  return marks.size === 0 ? { kind: "row", row, cells } : { kind: "row", row, cells, marks };
}
