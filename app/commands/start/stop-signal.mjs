import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import process from "node:process";

/** Aborts when the process is asked to end. The first request stops the step in hand; everything is then closed in order. */
export function stopSignal() {
  const stop = new AbortController();
  for (const name of ["SIGINT", "SIGTERM", "SIGHUP"]) process.on(name, () => stop.abort());
  const npm = npmAbove();
  if (npm !== undefined) stopAfter(npm, stop);
  return stop.signal;
}

/** npm passes on a request to end, but cannot when it is killed outright: then its child would be left behind. */
function stopAfter(npm, stop) {
  const timer = setInterval(() => {
    if (isAlive(npm)) return;
    clearInterval(timer);
    stop.abort();
  }, 500);
  timer.unref();
}

/** The number of the npm that started us: our parent, or its parent where npm goes through a shell. */
function npmAbove() {
  if (process.env.npm_lifecycle_event === undefined || process.platform === "win32") return undefined;
  const parent = lookUp(process.ppid);
  if (parent.command.includes("npm")) return process.ppid;
  return lookUp(parent.ppid).command.includes("npm") ? parent.ppid : undefined;
}

function lookUp(pid) {
  if (process.platform === "linux") return lookUpInProc(pid);
  const line = spawnSync("ps", ["-p", String(pid), "-o", "ppid=,command="], { encoding: "utf8" }).stdout?.trim() ?? "";
  const [, ppid = "0", command = ""] = /^(\d+)\s+(.*)$/.exec(line) ?? [];
  return { ppid: Number(ppid), command };
}

/** Containers often have no `ps`. The program's name, in brackets, may itself hold spaces and brackets. */
function lookUpInProc(pid) {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, "utf8");
    const [, ppid] = stat.slice(stat.lastIndexOf(")") + 2).split(" ");
    return { ppid: Number(ppid), command: readFileSync(`/proc/${pid}/cmdline`, "utf8").replaceAll("\0", " ") };
  } catch {
    return { ppid: 0, command: "" };
  }
}

function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === "EPERM";
  }
}
