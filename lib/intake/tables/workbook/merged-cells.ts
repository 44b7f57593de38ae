import { tooMany } from "./archive-problems";

/** Cells of one column that a spreadsheet shows as one; what they hold stands in the first. */
export interface MergedCells {
  readonly column: number;
  readonly first: number;
  readonly last: number;
  /** As the spreadsheet names them: A2:A5. */
  readonly range: string;
}

/** They are kept in memory; a sheet that people made has a few thousand. */
const mostMerged = 200_000;
const longestTag = 300;

/**
 * The cells that are merged over several rows, by their first row. They are listed below the cells of a sheet, so this
 * is a look of its own at its bytes, in which the tag can stand nowhere but as a tag.
 */
export async function mergedCells(bytes: AsyncIterable<Buffer>): Promise<readonly MergedCells[]> {
  const found: MergedCells[] = [];
  let rest = "";
  for await (const chunk of bytes) {
    const text = rest + chunk.toString("latin1");
    let end = 0;
    for (const match of text.matchAll(
      /<(?:\w+:)?mergeCell\s[^<>]{0,200}?ref=["']([A-Z]{1,3})(\d{1,7}):[A-Z]{1,3}(\d{1,7})["'][^<>]*>/g,
    )) {
      const [tag, letters = "", first = "", last = ""] = match;
      end = match.index + tag.length;
      if (Number(first) >= Number(last)) continue;
      if (found.length === mostMerged) throw tooMany(mostMerged, "merged cells");
      const range = `${letters}${first}:${letters}${last}`;
      found.push({ column: placeOf(letters), first: Number(first), last: Number(last), range });
    }
    rest = text.slice(Math.max(end, text.length - longestTag));
  }
  return found.toSorted((a, b) => a.first - b.first);
}

/** The place of a column by its letters: A is 0. */
function placeOf(letters: string): number {
  return [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 0x40, 0) - 1;
}
