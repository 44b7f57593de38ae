import { Unreadable } from "./unreadable";

/** UTF-8 bytes to text, a mark at the beginning taken off. @throws Unreadable for another kind of file or encoding */
export async function* decodeText(bytes: AsyncIterable<Uint8Array>): AsyncGenerator<string> {
  const decoder = new TextDecoder("utf-8", { fatal: true });
  let lines = 1;
  let first = true;
  for await (const chunk of bytes) {
    if (first) refuseOtherFiles(chunk);
    first = false;
    const text = decode(decoder, chunk, lines);
    lines += text.split("\n").length - 1;
    yield text;
  }
  yield decode(decoder, undefined, lines);
}

/** First bytes of files that people take for CSV. Source of the bytes: the formats' own specifications. */
const otherFiles: readonly { readonly begins: readonly number[]; readonly is: string }[] = [
  { begins: [0x50, 0x4b, 0x03, 0x04], is: "a spreadsheet workbook (XLSX) or a ZIP archive" },
  { begins: [0xd0, 0xcf, 0x11, 0xe0], is: "an old spreadsheet workbook (XLS)" },
  { begins: [0x25, 0x50, 0x44, 0x46], is: "a PDF document" },
  { begins: [0xff, 0xd8, 0xff], is: "a JPEG picture" },
  { begins: [0x89, 0x50, 0x4e, 0x47], is: "a PNG picture" },
  { begins: [0x1f, 0x8b], is: "a compressed file" },
  { begins: [0xff, 0xfe], is: "text in UTF-16" },
  { begins: [0xfe, 0xff], is: "text in UTF-16" },
];

function refuseOtherFiles(chunk: Uint8Array): void {
  const other = otherFiles.find(({ begins }) => begins.every((byte, index) => chunk[index] === byte));
  if (other === undefined) return;
  throw new Unreadable({
    problem: `This is ${other.is}, not CSV.`,
    fix: "Save or export it as CSV, UTF-8, with commas.",
  });
}

function decode(decoder: TextDecoder, chunk: Uint8Array | undefined, line: number): string {
  try {
    return chunk === undefined ? decoder.decode() : decoder.decode(chunk, { stream: true });
  } catch {
    throw new Unreadable({
      problem: `The text is not UTF-8, at or after line ${line + goodLines(chunk)}.`,
      fix: "Save the file as CSV UTF-8.",
    });
  }
}

/** Line ends before the first character that cannot be read. */
function goodLines(chunk: Uint8Array | undefined): number {
  const [good = ""] = new TextDecoder("utf-8").decode(chunk).split("\ufffd", 1);
  return good.split("\n").length - 1;
}
