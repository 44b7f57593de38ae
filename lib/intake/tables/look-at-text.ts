import { createReadStream } from "node:fs";
import { decodeBytes } from "./decode-bytes";
import { gatherRows } from "./gather-rows";
import { guessDelimiter } from "./guess-delimiter";
import { guessEncoding } from "./guess-encoding";
import type { FormWishes, Looked } from "./look-at-table";
import { encodingQuestions, lookOf } from "./look-of";
import type { Encoding } from "./table-form";
import { textRows } from "./text-rows";

/** A look at delimited text. */
export async function lookAtText(path: string, wishes: FormWishes, onRow: () => void): Promise<Looked> {
  const coded = wishes.encoding === undefined ? await guessEncoding(path) : undefined;
  const encoding = wishes.encoding ?? coded?.encoding ?? "utf-8";
  const parted = wishes.delimiter === undefined ? guessDelimiter(await beginningOf(path, encoding)) : undefined;
  const delimiter = wishes.delimiter ?? parted?.delimiter ?? ",";
  const gathered = await gatherRows(textRows(path, { encoding, delimiter }), wishes.headerRow, onRow);
  return lookOf(gathered, {
    form: { kind: "text", encoding, delimiter, headerRow: gathered.headerRow },
    reasons: { ...(coded && { encoding: coded.reason }), ...(parted && { delimiter: parted.reason }) },
    questions: encodingQuestions(coded),
    sheets: [],
  });
}

const beginningBytes = 1 << 18;

/** The beginning of the text, up to a line end where it is cut off. */
async function beginningOf(path: string, encoding: Encoding): Promise<string> {
  const bytes = createReadStream(path, { end: beginningBytes - 1 });
  let text = "";
  for await (const piece of decodeBytes(bytes, encoding)) text += piece;
  if (bytes.bytesRead < beginningBytes) return text;
  const lastBreak = Math.max(text.lastIndexOf("\n"), text.lastIndexOf("\r"));
  return lastBreak > 0 ? text.slice(0, lastBreak + 1) : text;
}
