import { createReadStream } from "node:fs";
import { decodeBytes } from "./decode-bytes";
import { guessDelimiter } from "./guess-delimiter";
import { type EncodingGuess, guessEncoding } from "./guess-encoding";
import { guessHeaderRow, type HeaderGuess } from "./guess-header-row";
import { KeepSome } from "./keep-some";
import type { FormWishes, Looked, TableQuestion } from "./look-at-table";
import type { SourceRow } from "./source-row";
import type { Encoding } from "./table-form";
import { textRows } from "./text-rows";

/** A look at delimited text. */
export async function lookAtText(path: string, wishes: FormWishes): Promise<Looked> {
  const coded = wishes.encoding === undefined ? await guessEncoding(path) : undefined;
  const encoding = wishes.encoding ?? coded?.encoding ?? "utf-8";
  const parted = wishes.delimiter === undefined ? guessDelimiter(await beginningOf(path, encoding)) : undefined;
  const delimiter = wishes.delimiter ?? parted?.delimiter ?? ",";
  const above = await firstRows(path, { encoding, delimiter });
  const headed = wishes.headerRow === undefined ? guessHeaderRow(above) : undefined;
  const headerRow = wishes.headerRow ?? headed?.headerRow ?? 1;

  const kept = new KeepSome();
  let header: readonly string[] | undefined;
  let unreadRows = 0;
  for await (const item of textRows(path, { encoding, delimiter })) {
    if (item.kind === "problem") return { ok: false, problems: [item.problem] };
    if (item.row < headerRow) continue;
    if (item.kind === "unread") unreadRows++;
    else if (item.row === headerRow) header = item.cells;
    else kept.add({ row: item.row, cells: item.cells });
  }
  if (header === undefined)
    return {
      ok: false,
      problems: [{ row: headerRow, problem: "This row holds no column names.", fix: "Name the row that does." }],
    };
  const { rows, ...shown } = kept.kept();
  return {
    ok: true,
    look: {
      form: { kind: "text", encoding, delimiter, headerRow },
      reasons: {
        ...(coded && { encoding: coded.reason }),
        ...(parted && { delimiter: parted.reason }),
        ...(headed && { headerRow: headed.reason }),
      },
      questions: questionsOf(coded, headed),
      sheets: [],
      header,
      ...shown,
      rows: rows + unreadRows,
      unreadRows,
    },
  };
}

function questionsOf(coded: EncodingGuess | undefined, headed: HeaderGuess | undefined): readonly TableQuestion[] {
  const questions: TableQuestion[] = [];
  if (coded !== undefined && coded.samples.length > 0)
    questions.push({ about: "encoding", question: "Which of the two readings is right?", samples: coded.samples });
  if (headed?.sure === false)
    questions.push({ about: "headerRow", question: "Which row holds the names of the columns?" });
  return questions;
}

const beginningBytes = 1 << 18;

async function beginningOf(path: string, encoding: Encoding): Promise<string> {
  let text = "";
  for await (const piece of decodeBytes(createReadStream(path, { end: beginningBytes - 1 }), encoding)) text += piece;
  if (text.length < beginningBytes / 4) return text;
  const lastBreak = Math.max(text.lastIndexOf("\n"), text.lastIndexOf("\r"));
  return lastBreak > 0 ? text.slice(0, lastBreak + 1) : text;
}

async function firstRows(path: string, form: { encoding: Encoding; delimiter: string }): Promise<readonly SourceRow[]> {
  const rows: SourceRow[] = [];
  for await (const item of textRows(path, form)) {
    if (item.kind === "row") rows.push(item);
    if (rows.length === 100) break;
  }
  return rows;
}
