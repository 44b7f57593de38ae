import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import process from "node:process";

/** One file for each process that serves this folder's build, named by its number. */
const folder = ".next/serving";

export function noteServing() {
  mkdirSync(folder, { recursive: true });
  const file = join(folder, String(process.pid));
  writeFileSync(file, "");
  return () => rmSync(file, { force: true });
}

/** Numbers of other processes that serve it; what dead ones left is removed. */
export function othersServing() {
  return listed().filter((pid) => {
    if (pid === process.pid) return false;
    if (isServing(pid)) return true;
    rmSync(join(folder, String(pid)), { force: true });
    return false;
  });
}

function listed() {
  try {
    return readdirSync(folder).map(Number);
  } catch {
    return [];
  }
}

function isServing(pid) {
  try {
    process.kill(pid, 0);
  } catch (error) {
    return error.code === "EPERM";
  }
  try {
    return readFileSync(`/proc/${pid}/cmdline`, "utf8").includes(".mjs"); // the number may be another program's by now
  } catch {
    return true; // no such list on this system
  }
}
