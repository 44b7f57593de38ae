import { type ChildProcess, spawn } from "node:child_process";
import { closeSync, openSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import type { Binaries } from "./binaries";
import { EmbeddedServerError } from "./embedded-server-error";
import { clusterFolder, serverEnvironment } from "./make-cluster";
import { readPostmaster } from "./postmaster";
import { serverSettings } from "./server-settings";
import { giveToServer, type ServerUser } from "./server-user";
import { socketFolder } from "./socket-folder";

/** Children of a server that was killed outright hold its shared memory for up to a second: 20 tries, 250 ms apart. */
const tries = 20;
const betweenTriesMs = 250;
/** Replaying the log after a crash may take a while; a server that is still busy with it is left to finish. */
const longestStartMs = 120_000;

/** Starts the server of a complete cluster and returns when it accepts connections. It outlives this process. */
export async function startServer(dataFolder: string, binaries: Binaries, user: ServerUser): Promise<void> {
  const socket = socketFolder(dataFolder);
  giveToServer(user, socket);
  writeFileSync(join(clusterFolder(dataFolder), "ohmsworth.conf"), serverSettings(socket, dataFolder));
  for (let attempt = 1; ; attempt++) {
    const outcome = await launch(dataFolder, binaries, user);
    if (outcome === "ready") return;
    if (attempt === tries || !outcome.includes("shared memory block")) {
      throw new EmbeddedServerError(
        `The database server did not start. The end of ${logFile(dataFolder)} says: ${outcome}`,
      );
    }
    await pause(betweenTriesMs);
  }
}

export const logFile = (dataFolder: string) => join(dataFolder, "server.log");

/** @returns "ready", or the last lines of the server's log when it ended instead */
async function launch(dataFolder: string, binaries: Binaries, user: ServerUser): Promise<string> {
  const server = spawnServer(dataFolder, binaries, user);
  let failure: Error | undefined;
  server.on("error", (error) => (failure = error));
  const giveUpAt = performance.now() + longestStartMs;
  while (performance.now() < giveUpAt) {
    if (failure !== undefined) throw failure;
    if (server.exitCode !== null || server.signalCode !== null) return lastLines(dataFolder);
    const found = readPostmaster(clusterFolder(dataFolder));
    if (found.kind === "ready" && found.pid === server.pid) return "ready";
    await pause(25);
  }
  throw new EmbeddedServerError(
    `The database server has been starting for ${longestStartMs / 1000} s. Look into ${logFile(dataFolder)}; it may still be recovering from a crash.`,
  );
}

/** A session of its own (`detached`) keeps Ctrl-C in the terminal from reaching it. `unshare` becomes the server: same number. */
function spawnServer(dataFolder: string, binaries: Binaries, user: ServerUser): ChildProcess {
  const prefix = user.kind === "namespace" ? user.prefix : [];
  const [program = binaries.postgres, ...words] = [...prefix, binaries.postgres, "-D", clusterFolder(dataFolder)];
  const account = user.kind === "account" ? { uid: user.uid, gid: user.gid } : {};
  const log = openSync(logFile(dataFolder), "a", 0o600);
  try {
    const server = spawn(program, words, {
      ...account,
      detached: true,
      stdio: ["ignore", log, log],
      env: serverEnvironment(),
    });
    server.unref();
    return server;
  } finally {
    closeSync(log);
  }
}

function lastLines(dataFolder: string): string {
  return readFileSync(logFile(dataFolder), "utf8").trim().split("\n").slice(-4).join(" ");
}
