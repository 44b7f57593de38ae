import { lstatSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** The kernel keeps 104 bytes (macOS) or 108 (Linux) for the whole name, with PostgreSQL's `/.s.PGSQL.5432` and an end mark. */
const longestFolderBytes = 104 - "/.s.PGSQL.5432.".length;

/**
 * Where the server's socket lies: in the data folder, or, when that path is too long for a socket, in a private
 * folder under the system's temporary one, whose name is kept so that the next start uses it again.
 */
export function socketFolder(dataFolder: string): string {
  const inside = join(dataFolder, "socket");
  if (Buffer.byteLength(inside) <= longestFolderBytes) {
    mkdirSync(inside, { recursive: true, mode: 0o700 });
    return inside;
  }
  const kept = keptFolder(dataFolder);
  if (kept !== undefined && isPrivate(kept)) return kept;
  const made = mkdtempSync(join(tmpdir(), "ohmsworth-"));
  writeFileSync(noteOf(dataFolder), made, { mode: 0o600 });
  return made;
}

/** Removes the folder outside the data folder, if there is one. To be called when the server has stopped. */
export function removeOutsideSocketFolder(dataFolder: string): void {
  const kept = keptFolder(dataFolder);
  if (kept === undefined) return;
  if (isPrivate(kept)) rmSync(kept, { recursive: true, force: true });
  rmSync(noteOf(dataFolder), { force: true });
}

const noteOf = (dataFolder: string) => join(dataFolder, "socket-folder");

function keptFolder(dataFolder: string): string | undefined {
  try {
    return readFileSync(noteOf(dataFolder), "utf8");
  } catch {
    return undefined;
  }
}

/** Anybody may write to the temporary folder: a folder that is not ours alone is not used again. */
function isPrivate(folder: string): boolean {
  try {
    const { mode, uid } = lstatSync(folder);
    const root = process.getuid?.() === 0; // root may have handed it to the server's account
    return (mode & 0o170077) === 0o040000 && (root || uid === process.getuid?.());
  } catch {
    return false;
  }
}
