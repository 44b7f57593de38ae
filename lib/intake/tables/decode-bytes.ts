import { isUtf8 } from "node:buffer";
import type { Encoding } from "./table-form";
import { decodeWindows1252 } from "./windows-1252";

/**
 * Bytes to text, a byte order mark at the beginning taken off. Nothing is ever replaced by a question mark: in a
 * UTF-8 file a line that is not UTF-8 is read as Windows-1252, in which every byte is a character, since such lines
 * come from files that were joined together.
 */
export async function* decodeBytes(bytes: AsyncIterable<Uint8Array>, encoding: Encoding): AsyncGenerator<string> {
  if (encoding === "utf-8") {
    yield* decodeLines(bytes);
    return;
  }
  if (encoding === "windows-1252") {
    for await (const chunk of bytes) yield decodeWindows1252(bufferOf(chunk));
    return;
  }
  const decoder = new TextDecoder(encoding);
  for await (const chunk of bytes) yield decoder.decode(chunk, { stream: true });
  yield decoder.decode();
}

async function* decodeLines(bytes: AsyncIterable<Uint8Array>): AsyncGenerator<string> {
  let left: Buffer = Buffer.alloc(0);
  let first = true;
  for await (const chunk of bytes) {
    const all = left.length === 0 ? bufferOf(chunk) : Buffer.concat([left, chunk]);
    const end = wholeLines(all);
    left = all.subarray(end);
    if (end === 0) continue;
    const text = mixedText(all.subarray(0, end));
    yield first ? text.replace(/^\ufeff/, "") : text;
    first = false;
  }
  const text = mixedText(left);
  yield first ? text.replace(/^\ufeff/, "") : text;
}

function bufferOf(bytes: Uint8Array): Buffer {
  return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length);
}

const longestLine = 1 << 20;

/** How many bytes hold whole lines; a line that is very long is cut between two characters. */
function wholeLines(bytes: Buffer): number {
  const end = Math.max(bytes.lastIndexOf(0x0a), bytes.lastIndexOf(0x0d)) + 1;
  if (end > 0 || bytes.length < longestLine) return end;
  let cut = bytes.length;
  while (cut > bytes.length - 4 && ((bytes[cut - 1] ?? 0) & 0xc0) === 0x80) cut--; // bytes that go on with a character
  return ((bytes[cut - 1] ?? 0) & 0xc0) === 0xc0 ? cut - 1 : bytes.length;
}

function mixedText(bytes: Buffer): string {
  if (isUtf8(bytes)) return bytes.toString("utf8");
  let text = "";
  for (const line of linesOf(bytes)) text += isUtf8(line) ? line.toString("utf8") : decodeWindows1252(line);
  return text;
}

/** Lines with the break that ends them. */
export function* linesOf(bytes: Buffer): Generator<Buffer> {
  for (let from = 0; from < bytes.length; ) {
    const feed = bytes.indexOf(0x0a, from);
    const end = feed === -1 ? bytes.length : feed + 1;
    yield bytes.subarray(from, end);
    from = end;
  }
}
