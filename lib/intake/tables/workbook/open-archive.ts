import { crc32 } from "node:zlib";
import { type Entry, openPromise, type ZipFile } from "yauzl";
import { Unreadable } from "../../unreadable";

// A workbook is a ZIP archive of XML parts. Whatever an archive claims, it cannot make us unfold more than this.
export const mostParts = 2_000;
export const mostUnfoldedBytes = 200_000_000;

/** The parts of an opened archive. Bytes unfolded are counted over all of them together. */
export interface Archive {
  readonly names: ReadonlySet<string>;
  /** The part's bytes, unfolded as they are asked for. @throws Unreadable for a part that is missing or damaged */
  readonly part: (name: string) => AsyncGenerator<Buffer>;
  readonly close: () => void;
}

/** @throws Unreadable for a file that is no whole ZIP archive, or one that would unfold too far */
export async function openArchive(path: string): Promise<Archive> {
  const zip = await openPromise(path, { lazyEntries: true, autoClose: false }).catch((error: unknown) => {
    throw damaged(error);
  });
  try {
    const entries = await readEntries(zip);
    const unfolded = { bytes: 0 };
    return {
      names: new Set(entries.keys()),
      part: (name) => unfold(zip, entries.get(name), name, unfolded),
      close: () => zip.close(),
    };
  } catch (error) {
    zip.close();
    throw error;
  }
}

async function readEntries(zip: ZipFile): Promise<ReadonlyMap<string, Entry>> {
  if (zip.entryCount > mostParts) throw tooManyParts(zip.entryCount);
  const entries = new Map<string, Entry>();
  let claimed = 0;
  try {
    for await (const entry of zip.eachEntry()) {
      claimed += entry.uncompressedSize;
      if (claimed > mostUnfoldedBytes) throw unfoldsTooFar();
      if (entries.has(entry.fileName)) throw new Error(`two parts are named ${entry.fileName}`);
      entries.set(entry.fileName, entry);
    }
  } catch (error) {
    throw error instanceof Unreadable ? error : damaged(error);
  }
  return entries;
}

async function* unfold(
  zip: ZipFile,
  entry: Entry | undefined,
  name: string,
  unfolded: { bytes: number },
): AsyncGenerator<Buffer> {
  if (entry === undefined) throw missingPart(name);
  if (entry.isEncrypted()) throw locked();
  let sum = 0;
  try {
    const stream = await zip.openReadStreamPromise(entry);
    for await (const chunk of stream) {
      const bytes = chunk as Buffer; // a stream of bytes gives buffers
      unfolded.bytes += bytes.length;
      if (unfolded.bytes > mostUnfoldedBytes) throw unfoldsTooFar();
      sum = crc32(bytes, sum);
      yield bytes;
    }
    if (sum !== entry.crc32) throw new Error(`the checksum of ${name} is wrong`);
  } catch (error) {
    throw error instanceof Unreadable ? error : damaged(error);
  }
}

const again = "Export or copy the workbook again; if it opens in a spreadsheet program, save it there as XLSX or CSV.";

export function missingPart(name: string): Unreadable {
  return new Unreadable({ problem: `The workbook is not whole: its part ${shortName(name)} is missing.`, fix: again });
}

export function damaged(error: unknown): Unreadable {
  const said = error instanceof Error ? error.message : String(error);
  if (/relative path|absolute path|invalid characters in fileName/.test(said))
    return new Unreadable({
      problem: "The archive has a part whose name points outside of it; no workbook does that.",
      fix: "Do not open this file; ask whoever sent it for a CSV file.",
    });
  if (/End of central directory|unexpected EOF|overflows file bounds|Invalid comment length/.test(said))
    return new Unreadable({ problem: "The workbook is cut off: its end is missing.", fix: again });
  return new Unreadable({ problem: `The workbook is damaged: ${shortName(said.replace(/\.$/, ""))}.`, fix: again });
}

export function unfoldsTooFar(): Unreadable {
  return new Unreadable({
    problem: `The workbook holds more than ${mostUnfoldedBytes / 1_000_000} MB once it is unfolded.`,
    fix: "Save its sheet as CSV, which may have any length, or split it.",
  });
}

function tooManyParts(parts: number): Unreadable {
  return new Unreadable({
    problem: `The archive has ${parts} parts; a workbook has at most ${mostParts}.`,
    fix: "Save the sheet that holds the rows as CSV.",
  });
}

export function locked(): Unreadable {
  return new Unreadable({
    problem: "The workbook is protected by a password.",
    fix: "Open it with its password and save a copy without one, or save its sheet as CSV.",
  });
}

function shortName(name: string): string {
  return name.length <= 100 ? name : `${name.slice(0, 100)}…`;
}
