import { existsSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { Client } from "pg";
import { EmbeddedServerError } from "./embedded-server-error";
import { clusterFolder } from "./make-cluster";
import { isServerOf, readPostmaster } from "./postmaster";
import { removeOutsideSocketFolder } from "./socket-folder";
import { logFile } from "./start-server";

const longestStopMs = 60_000;

/**
 * Stops the server when nobody else is connected. Otherwise it is left running and a note asks whoever leaves last to
 * stop it: a process that only attached stops the server when it finds that note, and never else.
 */
export async function stopServerIfIdle(dataFolder: string, url: string, started: boolean): Promise<void> {
  const note = join(dataFolder, "stop-when-idle");
  const server = readPostmaster(clusterFolder(dataFolder));
  if (server.kind === "none" || server.kind === "stale") return;
  if (!started && !existsSync(note)) return;
  if (await othersConnected(url)) {
    writeFileSync(note, "", { mode: 0o600 });
    return;
  }
  await stopServer(dataFolder, server.pid);
  rmSync(note, { force: true });
}

/** A "fast" stop: open transactions are rolled back, everything is written out, the lock files go. */
export async function stopServer(dataFolder: string, pid: number): Promise<void> {
  const cluster = clusterFolder(dataFolder);
  if (isServerOf(cluster, pid)) process.kill(pid, "SIGINT");
  const giveUpAt = Date.now() + longestStopMs;
  while (isServerOf(cluster, pid)) {
    if (Date.now() > giveUpAt) {
      throw new EmbeddedServerError(
        `The database server (process ${pid}) did not stop. Look into ${logFile(dataFolder)}.`,
      );
    }
    await pause(25);
  }
  removeOutsideSocketFolder(dataFolder);
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
