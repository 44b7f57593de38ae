import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { writeBackup } from "@/db/backup/write-backup";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { loadRestoreDrills } from "@/db/queries/restore-drills";
import { ownDatabaseUrl } from "../../own-database";
import { bundledCommand } from "../bundled-command";
import { fileFolder, shopDocument, startAfresh } from "../intake-files";

const files = fileFolder();
const folder = mkdtempSync(join(tmpdir(), "ohmsworth-trial-"));

beforeAll(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
});
afterAll(async () => {
  files.remove();
  rmSync(folder, { recursive: true, force: true });
  await closeDatabase();
});

/** `npm run restore-trial -- --in folder`, bundled: read from its sources it takes longer to start than to restore. */
function restoreTrial() {
  const words = [bundledCommand("restore-trial"), "--in", folder];
  const env = { ...process.env, DATABASE_URL: ownDatabaseUrl() };
  const { status, stdout, stderr } = spawnSync(process.execPath, words, { encoding: "utf8", env });
  return { status, said: `${stdout}${stderr}` };
}

test("a folder without a finished backup is told; then the newest is restored, and Health knows when", async () => {
  const none = restoreTrial();
  expect(none.status).toBe(1);
  expect(none.said).toContain("holds no finished backup");
  const madeAt = new Date("2026-11-20T03:00:00Z");
  await writeBackup({ url: ownDatabaseUrl(), folder: join(folder, "ohmsworth-2026-11-20T03-00-00Z") }, madeAt);
  const tried = restoreTrial();
  expect(tried.said).toContain("ohmsworth-2026-11-20T03-00-00Z: restored on trial");
  expect(tried.status).toBe(0);
  const { lastGood } = await readOnly(loadRestoreDrills);
  expect(lastGood?.backupAt).toBe("2026-11-20T03:00:00Z");
});
