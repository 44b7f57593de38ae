import { join } from "node:path";
import { parseArgs } from "node:util";
import { expireBackups } from "@/db/backup/expire-backups";
import { BackupError, type Manifest } from "@/db/backup/manifest";
import { tryBackup } from "@/db/backup/try-backup";
import { writeBackup } from "@/db/backup/write-backup";
import { databaseUrl } from "@/db/connection";
import { erasureListFile, keepErasureList } from "@/db/erasure/erasure-list";
import { migrateDatabase } from "@/db/migrate";
import { runCommand } from "./run-command";

const usage = `Everything the database holds, photos and papers included, as of one moment, in a new folder.

  npm run backup -- --to FOLDER [--try] [--keep-days 35]

  --to    a folder that may hold other backups; each gets a folder of its own, named by its time (UTC)
  --try   restores it at once into a database of its own, checks it and removes that again; the Health page shows when
  --keep-days   then removes backups in FOLDER that are older than so many days, but never the newest; what a customer asked
          to have erased must not live on in them, so 35 at most is advised`;

async function main(): Promise<number> {
  const asked = readArguments();
  if (asked === undefined) {
    console.error(usage);
    return 2;
  }
  const url = await databaseUrl();
  await migrateDatabase(url);
  const madeAt = new Date();
  const folder = join(asked.to, `ohmsworth-${madeAt.toISOString().slice(0, 19).replaceAll(":", "-")}Z`);
  const manifest = await writeBackup({ url, folder }, madeAt);
  await keepErasureList(join(asked.to, erasureListFile));
  console.log(`${folder}: ${contentOf(manifest)}.`);
  if (asked.try) {
    await tryBackup({ url, folder }, manifest, () => new Date());
    console.log("restored on trial: every row came back and every check held.");
  }
  if (asked.keepDays !== undefined) {
    for (const name of await expireBackups(asked.to, asked.keepDays, new Date())) console.log(`${name}: removed.`);
  }
  return 0;
}

function contentOf({ tables }: Manifest): string {
  const rows = tables.reduce((sum, table) => sum + table.rows, 0);
  return `${rows.toLocaleString("en-US")} rows of ${tables.length} tables`;
}

interface Asked {
  readonly to: string;
  readonly try: boolean;
  readonly keepDays: number | undefined;
}

function readArguments(): Asked | undefined {
  try {
    const { values } = parseArgs({
      options: { to: { type: "string" }, try: { type: "boolean" }, "keep-days": { type: "string" } },
    });
    if (values.to === undefined || values.to === "") return undefined;
    const days = values["keep-days"];
    if (days !== undefined && !/^[1-9]\d{0,4}$/.test(days)) return undefined;
    return { to: values.to, try: values.try ?? false, keepDays: days === undefined ? undefined : Number(days) };
  } catch {
    return undefined;
  }
}

await runCommand(main, { expected: BackupError });
