import { dirname, join } from "node:path";
import { parseArgs } from "node:util";
import { BackupError } from "@/db/backup/manifest";
import { restoreBackup } from "@/db/backup/restore-backup";
import { databaseUrl } from "@/db/connection";
import { repeatErasures } from "@/db/erasure/erase-customer";
import { erasureListFile, keepErasureList, readErasureList } from "@/db/erasure/erasure-list";
import { runCommand } from "./run-command";

const usage = `Fills an empty database from a backup: the embedded one, or the one that DATABASE_URL names.

  npm run restore -- --from FOLDER

  --from   the folder of one backup, the one that holds manifest.json
A database that already holds a company is left as it is. Customers who were erased after the backup was made are erased
again, by the lists (${erasureListFile}) beside the backup and in .data.`;

async function main(): Promise<number> {
  const from = readArguments();
  if (from === undefined) {
    console.error(usage);
    return 2;
  }
  const { tables, madeAt } = await restoreBackup({ url: await databaseUrl(), folder: from });
  const rows = tables.reduce((sum, table) => sum + table.rows, 0);
  console.log(
    `restored as of ${madeAt}: ${rows.toLocaleString("en-US")} rows of ${tables.length} tables; every check held.`,
  );
  const list = join(".data", erasureListFile);
  let again = 0;
  for (const path of [list, join(dirname(from), erasureListFile)])
    again += await repeatErasures(await readErasureList(path));
  await keepErasureList(list);
  if (again > 0) console.log(`erased again: ${again} customers who had been erased since.`);
  return 0;
}

function readArguments(): string | undefined {
  try {
    return parseArgs({ options: { from: { type: "string" } } }).values.from || undefined;
  } catch {
    return undefined;
  }
}

await runCommand(main, { expected: BackupError });
