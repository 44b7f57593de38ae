import { spawn } from "node:child_process";
import { commandWords } from "@/app/_processes/command-words";

/** On the global object, because the bundles of pages and of route handlers each carry a copy of this module. */
const key = Symbol.for("ohmsworth.forecast-run");
const holder = globalThis as { [key: symbol]: { startedAt: number; running: boolean } | undefined }; // symbols of our own have no type there

/** A run that ended in error is not tried again at once. */
const pauseMs = 60_000;
const memoryMegabytes = 768;

/** Works every part out in a process of its own, one at a time. It ends with the site. */
export function startForecastRun(): void {
  const last = holder[key];
  if (last?.running || (last !== undefined && performance.now() - last.startedAt < pauseMs)) return;
  const run = { startedAt: performance.now(), running: true };
  holder[key] = run;
  const child = spawn(process.execPath, [`--max-old-space-size=${memoryMegabytes}`, ...commandWords("forecast")], {
    stdio: ["ignore", "inherit", "inherit", "ipc"],
    env: { ...process.env, NODE_OPTIONS: "" },
  });
  const over = () => {
    run.running = false;
  };
  child.once("error", over);
  child.once("exit", over);
}
