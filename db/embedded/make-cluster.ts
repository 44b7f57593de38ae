import { spawn } from "node:child_process";
import { randomBytes } from "node:crypto";
import {
  appendFileSync,
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import type { Binaries } from "./binaries";
import { EmbeddedServerError } from "./embedded-server-error";
import { giveToServer, type ServerUser } from "./server-user";

/** The login that owns everything in an embedded server. */
export const embeddedLogin = "ohmsworth";

export const clusterFolder = (dataFolder: string) => join(dataFolder, "pg");
const passwordFile = (dataFolder: string) => join(dataFolder, "password");

/**
 * Makes the cluster if there is none. It is made under another name and renamed when complete, so that one cut off
 * half-way is never taken for a whole one. An existing cluster of another major version is refused, not touched.
 */
export async function makeCluster(dataFolder: string, binaries: Binaries, user: ServerUser): Promise<void> {
  removeUnfinished(dataFolder);
  const cluster = clusterFolder(dataFolder);
  if (existsSync(cluster)) {
    refuseOtherMajor(cluster, binaries.major);
    return;
  }
  const unfinished = join(dataFolder, `pg.new.${process.pid}`);
  mkdirSync(unfinished, { mode: 0o700 });
  giveToServer(user, unfinished);
  const password = passwordFile(dataFolder);
  if (!existsSync(password)) writeFileSync(password, randomBytes(24).toString("hex"), { mode: 0o600 });
  giveToServer(user, password);
  await runInitdb(binaries.initdb, unfinished, password, user);
  appendFileSync(join(unfinished, "postgresql.conf"), "\ninclude_if_exists = 'ohmsworth.conf'\n");
  chmodSync(unfinished, 0o700);
  renameSync(unfinished, cluster);
}

export function clusterPassword(dataFolder: string): string {
  return readFileSync(passwordFile(dataFolder), "utf8").trim();
}

/** Called with the start lock held, so whatever is unfinished was cut off; its initdb may still be writing for a moment. */
function removeUnfinished(dataFolder: string): void {
  for (const name of readdirSync(dataFolder)) {
    if (name.startsWith("pg.new.")) rmSync(join(dataFolder, name), { recursive: true, force: true, maxRetries: 10 });
  }
}

function refuseOtherMajor(cluster: string, major: string): void {
  const found = readFileSync(join(cluster, "PG_VERSION"), "utf8").trim();
  if (found === major) return;
  throw new EmbeddedServerError(
    `The data in ${cluster} was written by PostgreSQL ${found}, and this version of Ohmsworth brings PostgreSQL ${major}, which cannot open it. Go back to the version that wrote it, dump the database with pg_dump ${found}, and restore it into an empty data folder.`,
  );
}

/**
 * Text sorts by code point ("C.UTF-8"), and by the database itself: an index then never depends on which collation library
 * is installed, and texts are sorted in half the time.
 */
function runInitdb(initdb: string, folder: string, passwordPath: string, user: ServerUser): Promise<void> {
  const options = [
    "-D",
    folder,
    "--locale=C.UTF-8",
    "--locale-provider=builtin",
    "--builtin-locale=C.UTF-8",
    "--encoding=UTF8",
    "-U",
    embeddedLogin,
    "-A",
    "scram-sha-256",
    `--pwfile=${passwordPath}`,
  ];
  const prefix = user.kind === "namespace" ? user.prefix : [];
  const [program = initdb, ...words] = [...prefix, initdb, ...options];
  const account = user.kind === "account" ? { uid: user.uid, gid: user.gid } : {};
  return new Promise((resolve, reject) => {
    const child = spawn(program, words, { ...account, stdio: ["ignore", "pipe", "pipe"], env: serverEnvironment() });
    let said = "";
    child.stdout.on("data", (text: Buffer) => (said += text));
    child.stderr.on("data", (text: Buffer) => (said += text));
    child.on("error", reject);
    child.on("close", (code, signal) => {
      if (code === 0) return resolve();
      const last = said.trim().split("\n").slice(-4).join(" ");
      reject(
        new EmbeddedServerError(
          `The database could not be made in ${folder} (initdb ended with ${signal ?? code}): ${last}`,
        ),
      );
    });
  });
}

/** PG… variables of the user's shell would change which folder or port the programs take. */
export function serverEnvironment(): NodeJS.ProcessEnv {
  const mine = Object.entries(process.env).filter(([name]) => !name.startsWith("PG"));
  return Object.fromEntries(mine) as NodeJS.ProcessEnv; // Next declares NODE_ENV to be always there; the server does not look
}
