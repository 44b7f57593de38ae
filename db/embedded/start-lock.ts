import { readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";

/** No start takes this long; a holder's number that is alive after it belongs to another program by now. */
const longestStartMs = 180_000;

/**
 * Lets one process at a time make and start the server of a data folder.
 * It spares the others work and nothing more: that there is one cluster and one server is kept by PostgreSQL's own lock and by
 * a rename that only one process can win, so the moment between reading and breaking a dead process's lock does no harm.
 * @returns the function that gives the lock back, or undefined while another process has it
 */
export function takeStartLock(dataFolder: string): (() => void) | undefined {
  const file = join(dataFolder, "start.lock");
  if (isDead(file)) rmSync(file, { force: true });
  try {
    writeFileSync(file, String(process.pid), { flag: "wx", mode: 0o600 });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EEXIST") return undefined;
    throw error;
  }
  return () => {
    if (holder(file) === process.pid) rmSync(file, { force: true });
  };
}

function isDead(file: string): boolean {
  const pid = holder(file);
  if (pid === undefined) return false;
  try {
    if (Date.now() - statSync(file).mtimeMs > longestStartMs) return true;
  } catch {
    return false; // given back meanwhile
  }
  return pid !== 0 && !isAlive(pid);
}

/** 0 while the holder has made the file and not yet written its number. */
function holder(file: string): number | undefined {
  try {
    return Number(readFileSync(file, "utf8"));
  } catch {
    return undefined;
  }
}

export function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
}
