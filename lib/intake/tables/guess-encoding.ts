import { isAscii, isUtf8 } from "node:buffer";
import { createReadStream } from "node:fs";
import { linesOf } from "./decode-bytes";
import type { Encoding } from "./table-form";
import { decodeWindows1252 } from "./windows-1252";

export interface EncodingGuess {
  readonly encoding: Encoding;
  readonly reason: string;
  /** Pieces of text that the encodings read differently; empty where the file itself decides. */
  readonly samples: readonly { readonly utf8: string; readonly windows1252: string }[];
}

/** The encoding of a text file, decided by all of its bytes: a mark at the beginning, zero bytes, valid UTF-8, or else Windows-1252. */
export async function guessEncoding(path: string): Promise<EncodingGuess> {
  const tally = { plain: true, utf8: 0, other: 0, samples: [] as { utf8: string; windows1252: string }[] };
  let left: Buffer = Buffer.alloc(0);
  let first = true;
  for await (const chunk of createReadStream(path, { highWaterMark: 1 << 18 })) {
    const all = Buffer.concat([left, chunk as Buffer]); // without an encoding the stream gives buffers
    if (first) {
      const known = evidentEncoding(all);
      if (known !== undefined) return { ...known, samples: [] };
      first = false;
    }
    const end = all.lastIndexOf(0x0a) + 1;
    count(tally, all.subarray(0, end));
    left = all.subarray(end);
    if (left.length > longestLine) {
      count(tally, left);
      left = Buffer.alloc(0);
    }
  }
  count(tally, left);
  return verdict(tally);
}

const longestLine = 4 << 20;

/** What the first bytes alone decide. */
export function evidentEncoding(bytes: Buffer): Omit<EncodingGuess, "samples"> | undefined {
  return markedEncoding(bytes) ?? wideEncoding(bytes);
}

function markedEncoding(bytes: Buffer): Omit<EncodingGuess, "samples"> | undefined {
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf)
    return { encoding: "utf-8", reason: "UTF-8: the file begins with its mark." };
  if (bytes[0] === 0xff && bytes[1] === 0xfe)
    return { encoding: "utf-16le", reason: "UTF-16, low byte first: the file begins with its mark." };
  if (bytes[0] === 0xfe && bytes[1] === 0xff)
    return { encoding: "utf-16be", reason: "UTF-16, high byte first: the file begins with its mark." };
  return undefined;
}

/** UTF-16 without a mark: digits, commas and line ends have a zero byte, always on the same side. */
function wideEncoding(bytes: Buffer): Omit<EncodingGuess, "samples"> | undefined {
  const looked = bytes.subarray(0, 1 << 16);
  const zeros = [0, 0];
  for (const [place, byte] of looked.entries()) if (byte === 0) zeros[place % 2] = (zeros[place % 2] ?? 0) + 1;
  const [high = 0, low = 0] = zeros;
  const half = looked.length / 2;
  const wide = (most: number, least: number) => most > 0.2 * half && least < most / 10;
  if (wide(low, high)) return { encoding: "utf-16le", reason: "UTF-16, low byte first: every second byte is zero." };
  if (wide(high, low)) return { encoding: "utf-16be", reason: "UTF-16, high byte first: every second byte is zero." };
  return undefined;
}

interface Tally {
  plain: boolean;
  /** Lines with characters beyond ASCII that are valid UTF-8, and that are not. */
  utf8: number;
  other: number;
  readonly samples: { utf8: string; windows1252: string }[];
}

const mostSamples = 5;
/** Beyond so many valid lines only pieces that are not valid are counted line by line. */
const enoughLines = 10_000;

function count(tally: Tally, bytes: Buffer): void {
  if (tally.plain && isAscii(bytes)) return;
  tally.plain = false;
  if (tally.utf8 >= enoughLines && isUtf8(bytes)) return;
  for (const line of linesOf(bytes)) {
    if (isAscii(line)) continue;
    if (isUtf8(line)) tally.utf8++;
    else {
      tally.other++;
      if (tally.samples.length < mostSamples) tally.samples.push(sample(line));
    }
  }
}

/** The words around the first byte that is not ASCII. */
function sample(line: Buffer): { utf8: string; windows1252: string } {
  const place = line.findIndex((byte) => byte >= 0x80);
  const piece = line.subarray(Math.max(0, place - 20), place + 20);
  const clean = (text: string) => text.replaceAll(/\s+/g, " ").trim();
  return { utf8: clean(piece.toString("utf8")), windows1252: clean(decodeWindows1252(piece)) };
}

function verdict({ plain, utf8, other, samples }: Tally): EncodingGuess {
  if (plain) return { encoding: "utf-8", reason: "UTF-8: the file has plain ASCII characters only.", samples: [] };
  if (other === 0)
    return { encoding: "utf-8", reason: "UTF-8: every character beyond ASCII is valid UTF-8.", samples: [] };
  if (utf8 > other)
    return {
      encoding: "utf-8",
      reason: `UTF-8: most lines are valid; ${other} ${other === 1 ? "line is" : "lines are"} not, and read as Windows-1252.`,
      samples,
    };
  return { encoding: "windows-1252", reason: "Windows-1252: the text is not valid UTF-8.", samples };
}
