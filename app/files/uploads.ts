import { createHash, randomUUID } from "node:crypto";
import { createWriteStream } from "node:fs";
import { mkdir, rm } from "node:fs/promises";
import { join } from "node:path";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";

/** Files wait here between being chosen and being added; under random names, never under the sender's. */
export const uploadsFolder = join(process.cwd(), ".data", "uploads");

const anId = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;

export const mostBytes = 2 * 1024 ** 3;

export interface Upload {
  readonly id: string;
  readonly path: string;
  /** As the sender calls it: shown, never used to find a file. */
  readonly fileName: string;
}

export class TooLarge extends Error {}

/** What arrived. */
export interface KeptUpload extends Upload {
  readonly bytes: number;
  readonly sha256: string;
}

/** Streams a body to disk. */
export async function keepUpload(body: ReadableStream<Uint8Array>, fileName: string): Promise<KeptUpload> {
  const id = randomUUID();
  await mkdir(join(uploadsFolder, id), { recursive: true, mode: 0o700 });
  const path = join(uploadsFolder, id, "content");
  const hash = createHash("sha256");
  let bytes = 0;
  try {
    await pipeline(
      Readable.fromWeb(body as Parameters<typeof Readable.fromWeb>[0]), // the same stream, as Node names it
      async function* (chunks: AsyncIterable<Uint8Array>) {
        for await (const chunk of chunks) {
          bytes += chunk.length;
          if (bytes > mostBytes) throw new TooLarge();
          hash.update(chunk);
          yield chunk;
        }
      },
      createWriteStream(path, { mode: 0o600 }),
    );
  } catch (error) {
    await rm(join(uploadsFolder, id), { recursive: true, force: true });
    throw error;
  }
  return { id, path, fileName, bytes, sha256: hash.digest("hex") };
}

/** Where the content of an upload lies. @throws RangeError where the id is none of ours */
export function contentOf(id: string): string {
  return join(folderOf(id), "content");
}

/** Where the report on an upload's rows lies. */
export function reportOf(id: string): string {
  return join(folderOf(id), "report.csv");
}

export async function dropUpload(id: string): Promise<void> {
  await rm(folderOf(id), { recursive: true, force: true });
}

function folderOf(id: string): string {
  if (!anId.test(id)) throw new RangeError(`id: not of an upload: ${id}`);
  return join(uploadsFolder, id);
}
