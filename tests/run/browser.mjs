import { existsSync, readFileSync } from "node:fs";
import process from "node:process";
import { runNode, runStep } from "../../app/commands/start/run-step.mjs";
import { Refusal, say } from "../../app/commands/start/say.mjs";
import { findChromium } from "../../e2e/chromium.mjs";

/** The browser tests need a Chromium: one that is there is used; else the system's packages, else the test runner, provide one. */
export async function installBrowserIfMissing(signal) {
  if (await findChromium()) return;
  say("no Chromium found; installing one …");
  await (mayUseApt() ? installWithApt(signal) : installWithPlaywright(signal)).catch((error) => {
    if (error?.name === "AbortError") throw error;
    throw new Refusal(
      `No Chromium could be installed (${error.message}) Install one and name it: CHROMIUM_PATH=/path/to/chromium npm test`,
    );
  });
  if (!(await findChromium()))
    throw new Refusal("Chromium was installed and is not found. Name it: CHROMIUM_PATH=/path/to/chromium npm test");
}

/** Debian itself: Ubuntu's package of that name is only a pointer to another way of installing it. */
function mayUseApt() {
  const system = existsSync("/etc/os-release") ? readFileSync("/etc/os-release", "utf8") : "";
  return process.getuid?.() === 0 && /^ID="?debian"?$/m.test(system);
}

async function installWithApt(signal) {
  const environment = { DEBIAN_FRONTEND: "noninteractive" };
  await runStep("apt-get update", "apt-get", ["update"], { signal, environment });
  const words = ["install", "-y", "--no-install-recommends", "chromium"];
  await runStep("apt-get install", "apt-get", words, { signal, environment });
}

const installWithPlaywright = (signal) =>
  runNode("playwright install", ["node_modules/@playwright/test/cli.js", "install", "chromium"], { signal });
