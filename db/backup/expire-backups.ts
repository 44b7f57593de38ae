import { rm } from "node:fs/promises";
import { join } from "node:path";
import { finishedBackups } from "./finished-backups";

/**
 * Removes the backups that were made longer ago than so many days: what was erased here must not live on in them. The
 * newest finished one always stays, however old it is, and so does a folder that is no finished backup. Where the clock is
 * more than those days past the backup before the newest, it may be wrong: nothing goes until the next one is made.
 * @returns the names of those that are gone
 * @throws RangeError for days that are no whole number above 0
 */
export async function expireBackups(folder: string, days: number, now: Date): Promise<readonly string[]> {
  if (!Number.isInteger(days) || days < 1) throw new RangeError(`days: a whole number above 0 is wanted, not ${days}`);
  const found = (await finishedBackups(folder)).map(({ name, manifest }) => ({
    name,
    madeAt: Date.parse(manifest.madeAt),
  }));
  const [newest = 0, before] = found.map(({ madeAt }) => madeAt).toSorted((one, other) => other - one);
  const isOver = (madeAt: number) => now.getTime() - madeAt > days * 86_400_000;
  if (before === undefined || isOver(before)) return [];
  const over = found.filter(({ madeAt }) => madeAt < newest && isOver(madeAt));
  for (const { name } of over) await rm(join(folder, name), { recursive: true });
  return over.map(({ name }) => name).toSorted();
}
