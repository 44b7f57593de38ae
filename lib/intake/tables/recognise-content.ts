import { open } from "node:fs/promises";
import type { FileProblem } from "../parsed";
import { evidentEncoding } from "./guess-encoding";

export type Content =
  | { readonly kind: "text" | "workbook" | "lines" }
  | { readonly kind: "refused"; readonly problem: FileProblem };

const lookedAtBytes = 1 << 16;

/** What a file is by its content; its name is never asked. */
export async function recogniseContent(path: string): Promise<Content> {
  let bytes: Buffer;
  try {
    bytes = await beginningOf(path);
  } catch (error) {
    return refuse(...unopened(error));
  }
  if (bytes.length === 0) return refuse("The file is empty.", "Choose the file that holds the rows.");
  if (begins(bytes, [0x50, 0x4b, 0x03, 0x04]) || begins(bytes, [0x50, 0x4b, 0x05, 0x06])) return { kind: "workbook" };
  const other = others.find((each) => begins(bytes, each.begins));
  if (other !== undefined) return refuse(`This is ${other.is}.`, other.fix ?? asTable);
  if (begins(bytes, [0xd0, 0xcf, 0x11, 0xe0])) return refuseOldWorkbook(bytes);
  return byText(bytes);
}

async function beginningOf(path: string): Promise<Buffer> {
  const file = await open(path);
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(lookedAtBytes), 0, lookedAtBytes, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await file.close();
  }
}

function unopened(error: unknown): readonly [string, string] {
  const code = error instanceof Error && "code" in error ? error.code : undefined;
  if (code === "EISDIR") return ["This is a folder, not a file.", "Choose the file in it that holds the rows."];
  if (code === "ENOENT") return ["There is no file of this name.", "Look whether it was moved or renamed."];
  if (code === "EACCES") return ["The file may not be read.", "Ask whoever owns it for the right to read it."];
  throw error;
}

const asTable = "Export the rows as CSV or XLSX.";

/** First bytes by the formats' own specifications. */
const others: readonly { readonly begins: readonly number[]; readonly is: string; readonly fix?: string }[] = [
  { begins: [0x25, 0x50, 0x44, 0x46], is: "a PDF document" },
  { begins: [0xff, 0xd8, 0xff], is: "a picture (JPEG)" },
  { begins: [0x89, 0x50, 0x4e, 0x47], is: "a picture (PNG)" },
  { begins: [0x47, 0x49, 0x46, 0x38], is: "a picture (GIF)" },
  { begins: [0x49, 0x49, 0x2a, 0x00], is: "a picture (TIFF)" },
  { begins: [0x52, 0x49, 0x46, 0x46], is: "a picture or a sound" },
  { begins: [0x1f, 0x8b], is: "a compressed file (GZIP)", fix: "Unfold it and choose the file in it." },
  { begins: [0x37, 0x7a, 0xbc, 0xaf], is: "a compressed file (7Z)", fix: "Unfold it and choose the file in it." },
  { begins: [0x52, 0x61, 0x72, 0x21], is: "a compressed file (RAR)", fix: "Unfold it and choose the file in it." },
  {
    begins: [0x28, 0xb5, 0x2f, 0xfd],
    is: "a compressed file (Zstandard)",
    fix: "Unfold it and choose the file in it.",
  },
  { begins: [...Buffer.from("SQLite format 3")], is: "a database file (SQLite)" },
  { begins: [...Buffer.from("PAR1")], is: "a column file (Parquet)" },
  { begins: [...Buffer.from("{\\rtf")], is: "a text document (RTF)" },
];

function begins(bytes: Buffer, with_: readonly number[]): boolean {
  return with_.every((byte, place) => bytes[place] === byte);
}

/** Old workbooks and locked new ones share their first bytes; the names of their streams, in UTF-16, part them. */
function refuseOldWorkbook(bytes: Buffer): Content {
  const has = (name: string) => bytes.includes(Buffer.from(name, "utf16le"));
  if (has("EncryptedPackage") || has("EncryptionInfo"))
    return refuse(
      "The workbook is protected by a password.",
      "Open it with its password and save a copy without one, or save its sheet as CSV.",
    );
  return refuse(
    "This is a workbook of the old kind (XLS), or another old office document.",
    "Open it in a spreadsheet program and save it as XLSX, or its sheet as CSV.",
  );
}

function byText(bytes: Buffer): Content {
  const text = new TextDecoder(evidentEncoding(bytes)?.encoding ?? "utf-8").decode(bytes); // good enough to know its kind
  const start = text.trimStart().slice(0, 2000);
  if (/^<(!doctype\s+html|html|head|body|table|meta)\b/i.test(start))
    return refuse(
      "This is a web page (HTML), whatever its name says.",
      "Open it in a spreadsheet program and save it as XLSX or CSV.",
    );
  if (/^<\?xml|^<[a-z]+:?[a-z]*[\s>]/i.test(start))
    return refuse("This is XML, not a table.", "Open it in a spreadsheet program and save it as XLSX or CSV.");
  if (/^\{\s*"/.test(start) || /^\{\s*\}/.test(start)) return byObjects(text);
  if (/^\[\s*[{["\]]/.test(start))
    return refuse("This is one JSON list, not a table.", "Write one object a line (JSON Lines), or export it as CSV.");
  if (isBinary(text)) return refuse("This is no text, nor a workbook.", asTable);
  return start === "" && bytes.length < lookedAtBytes
    ? refuse("The file has nothing in it but blanks.", "Choose the file that holds the rows.")
    : { kind: "text" };
}

/** JSON Lines if the first line is an object by itself. */
function byObjects(text: string): Content {
  const [line = ""] = text.trimStart().split(/\r\n|\n|\r/, 1);
  if (line.length > 60_000 || line.trimEnd().endsWith("}")) return { kind: "lines" };
  return refuse(
    "This is one JSON document, not a table.",
    "Write one object a line (JSON Lines), or export it as CSV.",
  );
}

/** Control characters that no text has, in more than one place of a hundred. Zero bytes do occur in exports. */
function isBinary(text: string): boolean {
  let strange = 0;
  for (let place = 0; place < text.length; place++) {
    const code = text.charCodeAt(place);
    if ((code > 0 && code < 9) || (code > 13 && code < 32 && code !== 27)) strange++;
  }
  return strange > Math.max(20, text.length / 100);
}

function refuse(problem: string, fix: string): Content {
  return { kind: "refused", problem: { problem, fix } };
}
