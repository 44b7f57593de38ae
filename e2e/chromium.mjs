import { existsSync } from "node:fs";
import process from "node:process";

const usual = [
  "/usr/bin/chromium",
  "/usr/bin/google-chrome",
  "/usr/bin/google-chrome-stable",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
];

/** The browser that the tests drive: the one CHROMIUM_PATH names, one the system has, or the test runner's own. */
export async function findChromium() {
  const named = process.env.CHROMIUM_PATH;
  if (named) {
    if (existsSync(named)) return named;
    throw new Error(`CHROMIUM_PATH names "${named}", and there is no such file.`);
  }
  const { chromium } = await import("@playwright/test");
  return [...usual, chromium.executablePath()].find((path) => path && existsSync(path));
}
