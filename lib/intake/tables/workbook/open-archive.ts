import { crc32 } from "node:zlib";
import { type Entry, openPromise, type ZipFile } from "yauzl";
import { Unreadable } from "../../unreadable";
import {
  damaged,
  locked,
  missingPart,
  mostParts,
  mostUnfoldedBytes,
  tooManyParts,
  unfoldsTooFar,
} from "./archive-problems";

/** The parts of an opened archive. Bytes unfolded are counted over all of them together. */
export interface Archive {
  readonly names: ReadonlySet<string>;
  /** The part's bytes, unfolded as they are asked for. @throws Unreadable for a part that is missing or damaged */
  readonly part: (name: string) => AsyncGenerator<Buffer>;
  /** Unfolds a long part for its length and checksum alone, so that one that lies is found before it is parsed. @throws Unreadable */
  readonly check: (name: string) => Promise<void>;
  /** The same bytes for a look that keeps little of them; not counted a second time. @throws Unreadable */
  readonly again: (name: string) => AsyncGenerator<Buffer>;
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
      check: async (name) => {
        if ((entries.get(name)?.compressedSize ?? 0) < longFoldedBytes) return;
        for await (const _ of unfold(zip, entries.get(name), name, { bytes: 0 }));
      },
      again: (name) => unfold(zip, entries.get(name), name, { bytes: 0 }),
      close: () => zip.close(),
    };
  } catch (error) {
    zip.close();
    throw error;
  }
}

/** A part below this unfolds to 20 MB at most, which is parsed soon enough. */
const longFoldedBytes = 20_000;

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
