import { join } from "node:path";
import { parseArgs } from "node:util";
import { BackupError, type Manifest } from "@/db/backup/manifest";
import { tryBackup } from "@/db/backup/try-backup";
import { writeBackup } from "@/db/backup/write-backup";
import { closeDatabase } from "@/db/close-database";
import { databaseUrl } from "@/db/connection";
import { erasureListFile, keepErasureList } from "@/db/erasure/erasure-list";
import { migrateDatabase } from "@/db/migrate";

const usage = `Everything the database holds, photos and papers included, as of one moment, in a new folder.

  npm run backup -- --to FOLDER [--try]

  --to    a folder that may hold other backups; each gets a folder of its own, named by its time (UTC)
  --try   restores it at once into a database of its own, checks it and removes that again; the Health page shows when`;

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
  if (!asked.try) return 0;
  await tryBackup({ url, folder }, manifest, () => new Date());
  console.log("restored on trial: every row came back and every check held.");
  return 0;
}

function contentOf({ tables }: Manifest): string {
  const rows = tables.reduce((sum, table) => sum + table.rows, 0);
  return `${rows.toLocaleString("en-US")} rows of ${tables.length} tables`;
}

function readArguments(): { readonly to: string; readonly try: boolean } | undefined {
  try {
    const { values } = parseArgs({ options: { to: { type: "string" }, try: { type: "boolean" } } });
    return values.to === undefined || values.to === "" ? undefined : { to: values.to, try: values.try ?? false };
  } catch {
    return undefined;
  }
}

main()
  .catch((error: unknown) => {
    console.error(error instanceof BackupError ? error.message : error);
    return 1;
  })
  .then(async (code) => {
    await closeDatabase();
    process.exitCode = code;
  });
