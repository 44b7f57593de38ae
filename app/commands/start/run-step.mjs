import { spawn } from "node:child_process";
import process from "node:process";
import { Refusal } from "./say.mjs";

/** Runs a program to its end with our own output. Fails with one sentence when it fails, with AbortError when we are asked to stop. */
export function runStep(name, command, words, { signal, environment = {} } = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, words, {
      stdio: ["ignore", "inherit", "inherit"],
      env: { ...process.env, NEXT_TELEMETRY_DISABLED: "1", ...environment },
      signal,
      killSignal: "SIGTERM",
    });
    child.on("error", (error) =>
      reject(
        error.code === "ENOENT" ? new Refusal(`${name} needs the program "${command}", which is not there.`) : error,
      ),
    );
    child.on("close", (code, killedBy) => {
      if (signal?.aborted) return reject(new DOMException("asked to stop", "AbortError"));
      if (code === 0) return resolve();
      reject(new Refusal(`${name} failed (${killedBy ?? `exit code ${code}`}); its own message is above.`));
    });
  });
}

export const runNode = (name, words, options) => runStep(name, process.execPath, words, options);
