import { join, resolve } from "node:path";
import { parseArgs } from "node:util";
import { finishedBackups } from "@/db/backup/finished-backups";
import { BackupError } from "@/db/backup/manifest";
import { tryBackup } from "@/db/backup/try-backup";
import { databaseUrl } from "@/db/connection";
import { runCommand } from "./run-command";

const usage = `Restores the newest backup of a folder into a database of its own, checks it and removes that again; Health shows when.

  npm run restore-trial -- --in FOLDER

  --in   the folder that the backup command was given with --to
The site does it once a week by itself where OHMSWORTH_BACKUPS names the folder.`;

async function main(): Promise<number> {
  const asked = readArguments();
  if (asked === undefined) {
    console.error(usage);
    return 2;
  }
  const [newest] = await finishedBackups(asked).catch(cannotBeRead(asked));
  if (newest === undefined) throw new BackupError(`${resolve(asked)} holds no finished backup.`);
  const { name, manifest } = newest;
  await tryBackup({ url: await databaseUrl(), folder: join(asked, name) }, manifest, () => new Date());
  console.log(`${name}: restored on trial: every row came back and every check held.`);
  return 0;
}

function cannotBeRead(folder: string) {
  return (error: unknown) => {
    throw new BackupError(`${resolve(folder)} cannot be read.`, { cause: error });
  };
}

function readArguments(): string | undefined {
  try {
    return parseArgs({ options: { in: { type: "string" } } }).values.in || undefined;
  } catch {
    return undefined;
  }
}

await runCommand(main, { expected: BackupError });
