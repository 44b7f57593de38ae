import { existsSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { Client } from "pg";
import { EmbeddedServerError } from "./embedded-server-error";
import { clusterFolder } from "./make-cluster";
import { isServerOf, readPostmaster } from "./postmaster";
import { removeOutsideSocketFolder } from "./socket-folder";
import { isAlive } from "./start-lock";
import { logFile } from "./start-server";

const longestStopMs = 60_000;
const longestLeaveMs = 4_000;

/**
 * Stops the server when nobody else is connected and it is this process's to stop: because it started the server, or
 * because whoever did has left it to the last one, or has been killed.
 */
export async function stopServerIfIdle(dataFolder: string, url: string, started: boolean): Promise<void> {
  const server = readPostmaster(clusterFolder(dataFolder));
  if (server.kind === "none" || server.kind === "stale") return;
  if (!started && starterLives(dataFolder)) return;
  rmSync(starterFile(dataFolder), { force: true });
  if (await othersStay(url)) return;
  await stopServer(dataFolder, server.pid);
}

export function noteStarter(dataFolder: string): void {
  writeFileSync(starterFile(dataFolder), String(process.pid), { mode: 0o600 });
}

/** A "fast" stop: open transactions are rolled back, everything is written out, the lock files go. */
export async function stopServer(dataFolder: string, pid: number): Promise<void> {
  const cluster = clusterFolder(dataFolder);
  if (isServerOf(cluster, pid)) process.kill(pid, "SIGINT");
  const giveUpAt = performance.now() + longestStopMs;
  while (isServerOf(cluster, pid)) {
    if (performance.now() > giveUpAt) {
      throw new EmbeddedServerError(
        `The database server (process ${pid}) did not stop. Look into ${logFile(dataFolder)}.`,
      );
    }
    await pause(25);
  }
  removeOutsideSocketFolder(dataFolder);
}

const starterFile = (dataFolder: string) => join(dataFolder, "started-by");

function starterLives(dataFolder: string): boolean {
  const file = starterFile(dataFolder);
  return existsSync(file) && isAlive(Number(readFileSync(file, "utf8")));
}

/** A program that has just ended, or was killed in the middle of a statement, still shows for a moment. */
async function othersStay(url: string): Promise<boolean> {
  for (const giveUpAt = performance.now() + longestLeaveMs; await othersConnected(url); await pause(100)) {
    if (performance.now() > giveUpAt) return true;
  }
  return false;
}

async function othersConnected(url: string): Promise<boolean> {
  const client = new Client({ connectionString: url });
  client.on("error", () => {}); // a server that goes away meanwhile needs no stopping
  try {
    await client.connect();
    const { rows } = await client.query(
      "select 1 from pg_stat_activity where backend_type = 'client backend' and pid <> pg_backend_pid() limit 1",
    );
    return rows.length > 0;
  } catch {
    return false;
  } finally {
    await client.end().catch(() => {});
  }
}
