// npm run soak -- disk: the database and the files on their way in lie on a disk of 256 MB that fills up during loads and
// uploads. What does not fit is refused whole; once there is room again, the same goes in. Linux, as a login that may mount.
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, statfsSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import process from "node:process";
import { sql } from "drizzle-orm";
import { closeDatabase } from "@/db/close-database";
import { ensureEmbeddedServer } from "@/db/embedded/ensure-server";
import { csv, fileFolder, job, shopDocument, unit } from "../db/intake-files";

const disk = mkdtempSync(join(tmpdir(), "ohmsworth-disk-"));
const files = fileFolder();
const rows = 3000;
let stopServer = async () => {};

async function main(): Promise<number> {
  if (spawnSync("mount", ["-t", "tmpfs", "-o", "size=256M,mode=755", "tmpfs", disk]).status !== 0) {
    console.error("A disk of its own cannot be mounted here: run it on Linux as root.");
    return 2;
  }
  try {
    return await fillAndFree();
  } finally {
    await closeDatabase();
    await stopServer();
    process.chdir("/");
    spawnSync("umount", ["-l", disk]);
    rmSync(disk, { recursive: true, force: true });
    files.remove();
  }
}

async function fillAndFree(): Promise<number> {
  symlinkSync(join(process.cwd(), "node_modules"), join(disk, "node_modules"));
  process.chdir(disk); // the site keeps its files below the folder it works in
  const open = async () => {
    await closeDatabase();
    const server = await ensureEmbeddedServer(join(disk, "data"));
    stopServer = () => server.stop();
    process.env.DATABASE_URL = server.url;
  };
  await open();
  const { migrateDatabase } = await import("@/db/migrate");
  const { seedCatalogue } = await import("@/db/seed-catalogue");
  await migrateDatabase(process.env.DATABASE_URL ?? "");
  await seedCatalogue();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv(Array.from({ length: rows }, (_, n) => unit(`S${n}`))));
  let wrong = 0;
  for (const spare of [1, 4, 12, 24]) {
    const filler = leaveFree(spare);
    const load = await outcomeOf(() => files.load(jobsOf(spare), "add", `${spare}.csv`));
    const upload = await outcomeOf(() => send());
    rmSync(filler, { force: true });
    await open(); // a server that could not write its log has stopped; a start brings it back without a hand
    const left = await stored(spare);
    const whole = load === "added" ? left === rows : left === 0;
    const again = await outcomeOf(() => files.load(jobsOf(spare), "add", `${spare}.csv`));
    const after = await stored(spare);
    const kept = whole && after === rows && ["201", "507"].includes(upload);
    if (!kept) wrong += 1;
    console.log(
      `${spare} MB free: load ${load}, ${left} of ${rows} rows there; upload ${upload}; with room again ${again}, ${after} rows: ${kept ? "kept" : "NOT kept"}`,
    );
  }
  return wrong === 0 ? 0 : 1;
}

/** Fills the disk but for so many megabytes. */
function leaveFree(megabytes: number): string {
  const { bavail, bsize } = statfsSync(disk);
  const filler = join(disk, "filler");
  writeFileSync(filler, Buffer.alloc(Math.max(0, bavail * bsize - megabytes * 1024 ** 2)));
  return filler;
}

const jobsOf = (spare: number) =>
  csv(Array.from({ length: rows }, (_, n) => job(`J${spare}-${n}`, `S${n}`, { complaint: "x".repeat(400) })));

async function send(): Promise<{ readonly kind: string }> {
  const { POST } = await import("@/app/files/upload/route");
  const body = Buffer.alloc(30 * 1024 ** 2, "a,b\n");
  const answer = await POST(new Request("http://localhost/files/upload?name=x.csv", { method: "POST", body }));
  return { kind: String(answer.status) };
}

async function outcomeOf(work: () => Promise<{ readonly kind: string }>): Promise<string> {
  try {
    return (await work()).kind;
  } catch (error) {
    return `failed (${error instanceof Error ? error.name : "unknown"})`;
  }
}

async function stored(spare: number): Promise<number> {
  const { readOnly } = await import("@/db/client");
  const [found] = await readOnly((db) =>
    db.rows<{ jobs: number }>(sql`select count(*)::integer as jobs from jobs where job_number like ${`J${spare}-%`}`),
  );
  return found?.jobs ?? -1;
}

main().then(
  (code) => process.exit(code),
  (error) => {
    console.error(error);
    process.exit(1);
  },
);
