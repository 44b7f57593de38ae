import { spawn } from "node:child_process";
import process from "node:process";
import { commandWords } from "@/app/_processes/command-words";
import { readOnly } from "@/db/client";
import { lastNightly, loadLastRuns } from "@/db/queries/program-runs";
import { loadShop } from "@/db/queries/shop";
import { logLine } from "./log-line";
import { nightlyDue } from "./nightly-due";

/** How often it is asked whether the checks are due; the first time only after so long, so that a start stays quick. */
const everyMs = 10 * 60_000;
const memoryMegabytes = 768;

/** From now on the site itself runs the nightly checks, in a process of its own that ends with the site. */
export function startNightly(): void {
  let running = false;
  const over = () => {
    running = false;
  };
  setInterval(async () => {
    if (running || !(await isDue())) return;
    running = true;
    const child = spawn(process.execPath, [`--max-old-space-size=${memoryMegabytes}`, ...commandWords("nightly")], {
      stdio: ["ignore", "ignore", "ignore", "ipc"], // what it finds is kept in the database, and may not be in the log
      env: { ...process.env, NODE_OPTIONS: "" },
    });
    child.once("error", over);
    child.once("exit", (code) => {
      logLine({ level: code === 0 ? "info" : "error", what: "nightly checks", code: code ?? -1 });
      over();
    });
  }, everyMs).unref();
}

/** Not due while the database does not answer, or holds no company yet. */
async function isDue(): Promise<boolean> {
  try {
    return await readOnly(async (db) => {
      const runs = await loadLastRuns(db);
      const { timeZone } = await loadShop(db);
      return nightlyDue({ now: new Date(), timeZone, lastAt: lastNightly(runs) });
    });
  } catch {
    return false;
  }
}
