import { readdir } from "node:fs/promises";
import { join } from "node:path";
import { BackupError, type Manifest, readManifest } from "./manifest";

/** Folders that the backup command names; whatever else lies beside them is none of ours. */
const named = /^ohmsworth-\d{4}-\d{2}-\d{2}T\d{2}-\d{2}-\d{2}Z$/;

export interface FinishedBackup {
  readonly name: string;
  readonly manifest: Manifest;
}

/** The backups in a folder, newest first; those that never came to their end are none. */
export async function finishedBackups(folder: string): Promise<readonly FinishedBackup[]> {
  const found: FinishedBackup[] = [];
  for (const name of (await readdir(folder)).filter((entry) => named.test(entry))) {
    const manifest = await manifestOf(join(folder, name));
    if (manifest !== undefined) found.push({ name, manifest });
  }
  return found.toSorted((a, b) => Date.parse(b.manifest.madeAt) - Date.parse(a.manifest.madeAt));
}

async function manifestOf(backup: string): Promise<Manifest | undefined> {
  try {
    return await readManifest(backup);
  } catch (error) {
    if (error instanceof BackupError) return undefined;
    throw error;
  }
}
