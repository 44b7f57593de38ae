import { open, realpath } from "node:fs/promises";
import { join, sep } from "node:path";
import { largestPhotoBytes } from "./photo-limits";
import type { PhotoReading } from "./photo-reading";
import { reencodePhoto } from "./reencode-photo";

/** The picture of that name below the folder, read and written anew; a link that leads out of the folder is not followed. */
export async function readPhotoFile(folder: string, file: string): Promise<PhotoReading> {
  const home = await realpath(folder);
  const path = await realpath(join(home, file)).catch(() => undefined);
  if (path === undefined)
    return {
      ok: false,
      problem: "is not there",
      fix: "Put the picture below the folder of the CSV, or correct its name.",
    };
  if (!path.startsWith(home + sep))
    return {
      ok: false,
      problem: "leads out of the folder of the CSV",
      fix: "Put the picture itself below that folder.",
    };
  const handle = await open(path);
  try {
    const found = await handle.stat();
    if (!found.isFile()) return { ok: false, problem: "is not a file", fix: "Name the picture itself." };
    if (found.size > largestPhotoBytes)
      return { ok: false, problem: `is larger than ${largestPhotoBytes / 1_000_000} MB`, fix: "Send a smaller one." };
    return await reencodePhoto(await handle.readFile());
  } finally {
    await handle.close();
  }
}
