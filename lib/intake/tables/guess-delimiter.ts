import { RowSplitter } from "./split-rows";
import { type Delimiter, delimiters } from "./table-form";

const delimiterNames: Readonly<Record<Delimiter, string>> = {
  ",": "Comma",
  ";": "Semicolon",
  "\t": "Tab",
  "|": "Vertical bar",
};

/** The mark by which most rows come out equally wide; the beginning of the file is enough. */
export function guessDelimiter(beginning: string): { readonly delimiter: Delimiter; readonly reason: string } {
  const [best] = delimiters.map((delimiter) => widths(beginning, delimiter)).sort((a, b) => b.score - a.score);
  if (best === undefined || best.score === 0)
    return { delimiter: ",", reason: "Comma: the file seems to have a single column." };
  const { delimiter, alike, rows, width } = best;
  return {
    delimiter,
    reason: `${delimiterNames[delimiter]}: ${alike} of ${rows} rows looked at have ${width} columns.`,
  };
}

interface Widths {
  readonly delimiter: Delimiter;
  readonly width: number;
  readonly alike: number;
  readonly rows: number;
  readonly score: number;
}

/** How alike the rows are; more columns decide between two marks that part them equally well. */
function widths(beginning: string, delimiter: Delimiter): Widths {
  const splitter = new RowSplitter(delimiter);
  const items = [...splitter.push(beginning), ...splitter.end()].filter((item) => item.kind === "row");
  const counts = new Map<number, number>();
  for (const { cells } of items) counts.set(cells.length, (counts.get(cells.length) ?? 0) + 1);
  const [width = 1, alike = 0] = [...counts].filter(([each]) => each > 1).sort(([, a], [, b]) => b - a)[0] ?? [];
  const rows = items.length;
  const score = rows === 0 ? 0 : (alike / rows) * (1 + Math.min(width, 50) / 50);
  return { delimiter, width, alike, rows, score };
}
