import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { inject } from "vitest";

/** The file that a program was bundled to when the tests began: the same code, which starts in a third of the time. */
export function bundledCommand(name: "load" | "restore-trial" | "work-on-file" | "ask-for-server"): string {
  return join(inject("commands"), `${name}.mjs`);
}

/** `npm run load -- words…`, bundled. */
export function runLoad(...words: readonly string[]) {
  return run(bundledCommand("load"), ...words);
}

/** `npm run load -- words…` to the letter, read from its sources. */
export function runLoadFromSource(...words: readonly string[]) {
  return run("--import", "tsx", "app/commands/load.ts", ...words);
}

function run(...words: readonly string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, words, { encoding: "utf8" });
  return { status, stdout, stderr };
}
