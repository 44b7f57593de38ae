import { readFileSync } from "node:fs";

/** Memory of all processes below this one, of Linux only; 0 where that cannot be read. */
export function residentMegabytes(pid: number): number {
  return childrenOf(pid).reduce((sum, child) => sum + ownMegabytes(child) + residentMegabytes(child), 0);
}

function childrenOf(pid: number): readonly number[] {
  return read(`/proc/${pid}/task/${pid}/children`).split(" ").filter(Boolean).map(Number);
}

/** The embedded database shares its memory between its processes and is no part of the site. */
function ownMegabytes(pid: number): number {
  if (read(`/proc/${pid}/cmdline`).includes("postgres")) return 0;
  return Number(/^VmRSS:\s+(\d+)/m.exec(read(`/proc/${pid}/status`))?.[1] ?? 0) / 1024;
}

function read(path: string): string {
  try {
    return readFileSync(path, "utf8");
  } catch {
    return "";
  }
}
