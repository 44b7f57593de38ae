import { createHash } from "node:crypto";
import { createReadStream } from "node:fs";

export interface FileFingerprint {
  readonly sha256: string;
  readonly bytes: number;
}

/** What tells whether the same bytes were loaded before. */
export async function fingerprint(path: string): Promise<FileFingerprint> {
  const hash = createHash("sha256");
  let bytes = 0;
  for await (const chunk of createReadStream(path, { highWaterMark: 1 << 20 })) {
    hash.update(chunk as Buffer); // a stream without an encoding gives buffers
    bytes += (chunk as Buffer).length;
  }
  return { sha256: hash.digest("hex"), bytes };
}
