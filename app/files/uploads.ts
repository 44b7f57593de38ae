import { randomUUID } from "node:crypto";
import { createWriteStream } from "node:fs";
import { mkdir, readFile, rm, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";

/** Files wait here between being chosen and being added; under random names, never under the sender's. */
const folder = join(process.cwd(), ".data", "uploads");
const anId = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;

export const mostBytes = 2 * 1024 ** 3;

export interface Upload {
  readonly id: string;
  readonly path: string;
  /** As the sender calls it: shown, never used to find a file. */
  readonly fileName: string;
}

export class TooLarge extends Error {}

/** Streams a body to disk. @returns the upload and how many bytes arrived */
export async function keepUpload(
  body: ReadableStream<Uint8Array>,
  fileName: string,
): Promise<Upload & { readonly bytes: number }> {
  const id = randomUUID();
  await mkdir(join(folder, id), { recursive: true, mode: 0o700 });
  const path = join(folder, id, "content");
  let bytes = 0;
  try {
    await pipeline(
      Readable.fromWeb(body as Parameters<typeof Readable.fromWeb>[0]), // the same stream, as Node names it
      async function* (chunks: AsyncIterable<Uint8Array>) {
        for await (const chunk of chunks) {
          bytes += chunk.length;
          if (bytes > mostBytes) throw new TooLarge();
          yield chunk;
        }
      },
      createWriteStream(path, { mode: 0o600 }),
    );
    await writeFile(join(folder, id, "name"), fileName, { mode: 0o600 });
  } catch (error) {
    await rm(join(folder, id), { recursive: true, force: true });
    throw error;
  }
  return { id, path, fileName, bytes };
}

/** The upload of that id; undefined where it was added, dropped or never was. */
export async function findUpload(id: string): Promise<Upload | undefined> {
  if (!anId.test(id)) return undefined;
  const name = await readFile(join(folder, id, "name"), "utf8").catch(() => undefined);
  return name === undefined ? undefined : { id, path: join(folder, id, "content"), fileName: name };
}

export async function dropUpload(id: string): Promise<void> {
  if (anId.test(id)) await rm(join(folder, id), { recursive: true, force: true });
}
