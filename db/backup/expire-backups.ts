import { readdir, rm } from "node:fs/promises";
import { join } from "node:path";
import { BackupError, readManifest } from "./manifest";

/** Folders that the backup command names; whatever else lies beside them is not ours to remove. */
const named = /^ohmsworth-\d{4}-\d{2}-\d{2}T\d{2}-\d{2}-\d{2}Z$/;

/**
 * Removes the backups that were made longer ago than so many days: what was erased here must not live on in them. The
 * newest finished one always stays, however old it is, and so does a folder that is no finished backup.
 * @returns the names of those that are gone
 * @throws RangeError for days that are no whole number above 0
 */
export async function expireBackups(folder: string, days: number, now: Date): Promise<readonly string[]> {
  if (!Number.isInteger(days) || days < 1) throw new RangeError(`days: a whole number above 0 is wanted, not ${days}`);
  const found: { readonly name: string; readonly madeAt: number }[] = [];
  for (const name of (await readdir(folder)).filter((entry) => named.test(entry))) {
    const madeAt = await timeOf(join(folder, name));
    if (madeAt !== undefined) found.push({ name, madeAt });
  }
  const newest = Math.max(...found.map(({ madeAt }) => madeAt));
  const over = found.filter(({ madeAt }) => madeAt < newest && now.getTime() - madeAt > days * 86_400_000);
  for (const { name } of over) await rm(join(folder, name), { recursive: true });
  return over.map(({ name }) => name).toSorted();
}

async function timeOf(backup: string): Promise<number | undefined> {
  try {
    return Date.parse((await readManifest(backup)).madeAt);
  } catch (error) {
    if (error instanceof BackupError) return undefined;
    throw error;
  }
}
