import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { Client } from "pg";
import { ensureEmbeddedServer } from "@/db/embedded/ensure-server";
import { clusterFolder } from "@/db/embedded/make-cluster";
import { readPostmaster } from "@/db/embedded/postmaster";
import { stopServer } from "@/db/embedded/stop-server";
import { bundledCommand } from "../bundled-command";

const base = () => join(tmpdir(), "ohmsworth-launch-");

export function newDataFolder(name = "plain"): string {
  const folder = mkdtempSync(base());
  chmodSync(folder, 0o755); // where root hands the server to another account, that account must be able to pass
  return join(folder, name);
}

/**
 * Folders in which a cluster stands ready, each a copy of one that was made, used and stopped; for what does not ask how one
 * is made. Owners and rights are those of the first.
 */
export function copiedFolders() {
  const first = newDataFolder();
  return {
    async make() {
      await (await ensureEmbeddedServer(first)).stop();
    },
    copy(name?: string): string {
      const folder = newDataFolder(name);
      mkdirSync(dirname(folder), { recursive: true });
      const { status, stderr } = spawnSync("cp", ["-a", first, folder], { encoding: "utf8" });
      if (status !== 0) throw new Error(`not copied: ${stderr}`);
      return folder;
    },
    remove: () => removeDataFolder(first),
  };
}

/** Starts a process that asks for the folder's server; `prefix` may make it run as somebody else. */
export function asker(
  folder: string,
  then: "leave" | "stay" | "stop" = "leave",
  prefix: readonly string[] = [],
): ChildProcess {
  const [program = process.execPath, ...words] = [
    ...prefix,
    process.execPath,
    bundledCommand("ask-for-server"),
    folder,
    then,
  ];
  return spawn(program, words, { stdio: ["ignore", "pipe", "pipe"] });
}

/** What the asking process printed, once it has printed a line. */
export function answerOf(child: ChildProcess): Promise<{ url: string; started: boolean }> {
  return new Promise((resolve, reject) => {
    let out = "";
    let complaint = "";
    child.stderr?.on("data", (text) => (complaint += text));
    child.stdout?.on("data", (text) => {
      out += text;
      if (out.includes("\n")) resolve(JSON.parse(out));
    });
    child.on("exit", (code) => reject(new Error(`ended with ${code} before it answered: ${complaint}`)));
  });
}

export const ended = (child: ChildProcess) =>
  child.exitCode !== null || child.signalCode !== null
    ? Promise.resolve()
    : new Promise<void>((resolve) => child.once("exit", () => resolve()));

export const serverPid = (folder: string) =>
  Number(readFileSync(join(clusterFolder(folder), "postmaster.pid"), "utf8").split("\n")[0]);

export async function query(url: string, text: string): Promise<Record<string, unknown>[]> {
  const client = new Client({ connectionString: url });
  client.on("error", () => {});
  await client.connect();
  try {
    return (await client.query(text)).rows;
  } finally {
    await client.end().catch(() => {});
  }
}

/** Whatever state a test left it in. */
export async function removeDataFolder(folder: string): Promise<void> {
  const found = readPostmaster(clusterFolder(folder));
  if (found.kind === "ready" || found.kind === "busy") await stopServer(folder, found.pid);
  const [made = ""] = folder.slice(base().length).split("/");
  rmSync(base() + made, { recursive: true, force: true });
}
