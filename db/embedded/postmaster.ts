import { spawnSync } from "node:child_process";
import { readFileSync, rmSync } from "node:fs";
import { join } from "node:path";

/** What `postmaster.pid` and the process table say together about the server of one cluster folder. */
export type Postmaster =
  | { readonly kind: "none" }
  | { readonly kind: "stale"; readonly socketFolder: string | undefined }
  | { readonly kind: "busy"; readonly pid: number }
  | { readonly kind: "ready"; readonly pid: number; readonly socketFolder: string; readonly port: number };

/** The file alone proves nothing: after a crash its number may belong to any other program by now. */
export function readPostmaster(clusterFolder: string): Postmaster {
  const lines = pidFileLines(clusterFolder);
  if (lines === undefined) return { kind: "none" };
  const pid = Number(lines[0]);
  const socketFolder = lines[4] || undefined;
  if (!isServerOf(clusterFolder, pid)) return { kind: "stale", socketFolder };
  if (lines[7] !== "ready" || socketFolder === undefined) return { kind: "busy", pid };
  return { kind: "ready", pid, socketFolder, port: Number(lines[3]) };
}

/**
 * Removes what a dead server left. PostgreSQL does so by itself unless the number is in use by another program, when
 * it takes that program for a server and refuses to start; we have looked and know better.
 */
export function clearStale(clusterFolder: string, stale: { readonly socketFolder: string | undefined }): void {
  rmSync(join(clusterFolder, "postmaster.pid"), { force: true });
  if (stale.socketFolder === undefined) return;
  rmSync(join(stale.socketFolder, ".s.PGSQL.5432.lock"), { force: true });
  rmSync(join(stale.socketFolder, ".s.PGSQL.5432"), { force: true });
}

export function isServerOf(clusterFolder: string, pid: number): boolean {
  if (!Number.isInteger(pid) || pid < 2) return false;
  const [program = "", ...words] = commandLine(pid);
  return program.endsWith("postgres") && words.join(" ") === `-D ${clusterFolder}`;
}

function pidFileLines(clusterFolder: string): string[] | undefined {
  try {
    const lines = readFileSync(join(clusterFolder, "postmaster.pid"), "utf8").split("\n");
    return lines.map((line) => line.trim());
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return undefined;
    throw error;
  }
}

/** Empty for a process that is gone, or that has ended and only waits to be collected. */
function commandLine(pid: number): readonly string[] {
  if (process.platform === "linux") {
    try {
      return readFileSync(`/proc/${pid}/cmdline`, "utf8").split("\0").slice(0, -1);
    } catch {
      return [];
    }
  }
  const line = spawnSync("ps", ["-p", String(pid), "-o", "command="], { encoding: "utf8" }).stdout?.trim() ?? "";
  const options = line.indexOf(" -D ");
  return options < 0 ? [line] : [line.slice(0, options), line.slice(options + 1)];
}
