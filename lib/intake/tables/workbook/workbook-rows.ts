import { Unreadable } from "../../unreadable";
import type { SourceItem } from "../source-row";
import { openArchive } from "./open-archive";
import { readParts } from "./read-parts";
import { sheetRows } from "./sheet-rows";

/** Every row of one sheet that is not blank, the header and what stands above it included. */
export async function* workbookRows(
  path: string,
  { sheet, dateBase }: { readonly sheet: string; readonly dateBase: 1900 | 1904 },
): AsyncGenerator<SourceItem> {
  let close = () => {};
  try {
    const archive = await openArchive(path);
    close = archive.close;
    const workbook = await readParts(archive);
    const chosen = workbook.sheets.find(({ name }) => name === sheet);
    if (chosen === undefined) throw noSuchSheet(sheet, workbook.sheets);
    for await (const row of sheetRows(archive, chosen.part, { ...workbook, dateBase })) yield { kind: "row", ...row };
  } catch (error) {
    if (!(error instanceof Unreadable)) throw error;
    yield { kind: "problem", problem: error.found };
  } finally {
    close();
  }
}

export function noSuchSheet(sheet: string, sheets: readonly { readonly name: string }[]): Unreadable {
  const names = sheets.map(({ name }) => name).join(", ");
  return new Unreadable({ problem: `The workbook has no sheet ${sheet}.`, fix: `Choose one of: ${names}.` });
}
