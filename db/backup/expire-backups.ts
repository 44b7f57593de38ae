import { rm } from "node:fs/promises";
import { join } from "node:path";
import { finishedBackups } from "./finished-backups";

/**
 * Removes the backups that were made longer ago than so many days: what was erased here must not live on in them. The
 * newest finished one always stays, however old it is, and so does a folder that is no finished backup.
 * @returns the names of those that are gone
 * @throws RangeError for days that are no whole number above 0
 */
export async function expireBackups(folder: string, days: number, now: Date): Promise<readonly string[]> {
  if (!Number.isInteger(days) || days < 1) throw new RangeError(`days: a whole number above 0 is wanted, not ${days}`);
  const found = (await finishedBackups(folder)).map(({ name, manifest }) => ({
    name,
    madeAt: Date.parse(manifest.madeAt),
  }));
  const newest = Math.max(...found.map(({ madeAt }) => madeAt));
  const over = found.filter(({ madeAt }) => madeAt < newest && now.getTime() - madeAt > days * 86_400_000);
  for (const { name } of over) await rm(join(folder, name), { recursive: true });
  return over.map(({ name }) => name).toSorted();
}
