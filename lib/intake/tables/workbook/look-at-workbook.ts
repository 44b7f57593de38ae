import { Unreadable } from "../../unreadable";
import { type Gathered, gatherRows } from "../gather-rows";
import type { FormWishes, Looked, TableLook, TableQuestion } from "../look-at-table";
import { lookOf } from "../look-of";
import type { SourceItem } from "../source-row";
import { type Archive, openArchive } from "./open-archive";
import { readParts, type WorkbookParts } from "./read-parts";
import { sheetRows } from "./sheet-rows";
import { noSuchSheet } from "./workbook-rows";

/** A look at a workbook: every sheet is read once, and the fullest is taken unless a person names one. */
export async function lookAtWorkbook(path: string, wishes: FormWishes, onRow: () => void): Promise<Looked> {
  let close = () => {};
  try {
    const archive = await openArchive(path);
    close = archive.close;
    const workbook = await readParts(archive);
    const used = await usedSheets(archive, workbook, wishes, onRow);
    const sheets = used.map(({ name, gathered }) => ({ name, rows: gathered.allRows }));
    const [fullest] = used.toSorted((a, b) => b.gathered.allRows - a.gathered.allRows);
    const chosen = wishes.sheet === undefined ? fullest : used.find(({ name }) => name === wishes.sheet);
    if (chosen === undefined) throw wishes.sheet === undefined ? empty() : noSuchSheet(wishes.sheet, sheets);
    const { headerRow } = chosen.gathered;
    const asked = wishes.sheet === undefined && used.length > 1;
    return lookOf(chosen.gathered, {
      form: { kind: "workbook", sheet: chosen.name, dateBase: workbook.dateBase, headerRow },
      reasons: {
        dateBase: `The workbook says that it counts its days from ${workbook.dateBase}.`,
        ...(asked && { sheet: `${chosen.name}: of ${used.length} sheets with anything in them it has the most rows.` }),
      } satisfies TableLook["reasons"],
      questions: asked ? ([{ about: "sheet", question: "Which sheet holds the rows?" }] satisfies TableQuestion[]) : [],
      sheets,
    });
  } catch (error) {
    if (!(error instanceof Unreadable)) throw error;
    return { ok: false, problems: [error.found] };
  } finally {
    close();
  }
}

interface UsedSheet {
  readonly name: string;
  readonly gathered: Gathered;
}

async function usedSheets(
  archive: Archive,
  workbook: WorkbookParts,
  wishes: FormWishes,
  onRow: () => void,
): Promise<readonly UsedSheet[]> {
  const used: UsedSheet[] = [];
  for (const { name, part } of workbook.sheets) {
    const wished = wishes.sheet === undefined || wishes.sheet === name ? wishes.headerRow : undefined;
    const gathered = await gatherRows(items(archive, part, workbook), wished, onRow);
    if (gathered.allRows > 0) used.push({ name, gathered });
  }
  return used;
}

async function* items(archive: Archive, part: string, workbook: WorkbookParts): AsyncGenerator<SourceItem> {
  for await (const row of sheetRows(archive, part, workbook)) yield { kind: "row", ...row };
}

function empty(): Unreadable {
  return new Unreadable({
    problem: "The workbook has no cells with anything in them.",
    fix: "Choose the file that holds the rows.",
  });
}
