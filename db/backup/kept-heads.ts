import { existsSync } from "node:fs";
import { readdir } from "node:fs/promises";
import { join } from "node:path";
import type { ChainHead } from "../queries/change-chain";
import { BackupError, manifestFile, readManifest } from "./manifest";

/** The last link of the change log as each backup noted it. @param folder of one backup, or of several */
export async function keptHeads(folder: string): Promise<readonly ChainHead[]> {
  const heads: ChainHead[] = [];
  for (const backup of await backupsIn(folder)) {
    const { changeLog } = await readManifest(backup);
    if (changeLog !== undefined) heads.push(changeLog);
  }
  if (heads.length > 0) return heads;
  throw new BackupError(
    `No backup in ${folder} holds a link of the change log: they are older than the log, or there is none.`,
  );
}

async function backupsIn(folder: string): Promise<readonly string[]> {
  if (existsSync(join(folder, manifestFile))) return [folder];
  try {
    const names = await readdir(folder);
    return names.map((name) => join(folder, name)).filter((path) => existsSync(join(path, manifestFile)));
  } catch (error) {
    throw new BackupError(`${folder} cannot be read.`, { cause: error });
  }
}
