import { defineConfig } from "@playwright/test";
import { browserFlags } from "./browser-flags";
import { findChromium } from "./chromium.mjs";
import { ownSite, sites } from "./sites.mjs";

// Last day of the invented company's records: days left are counted from it, whatever day the tests run.
process.env.OHMSWORTH_TODAY = "2026-10-31";
const executablePath = await findChromium();

export default defineConfig({
  testDir: ".",
  globalSetup: "./sign-in-once.ts",
  outputDir: "../test-results",
  workers: sites.length,
  fullyParallel: false,
  forbidOnly: true,
  timeout: 120_000,
  expect: { timeout: 15_000 }, // a write waits its turn on a busy machine; what never comes fails all the same
  reporter: "list",
  use: {
    storageState: ownSite.owner, // signed in as the owner; tests of signing in begin with nobody
    baseURL: `http://127.0.0.1:${ownSite.port}`,
    locale: "en-US",
    timezoneId: "America/Chicago",
    screenshot: "only-on-failure",
    launchOptions: { args: [...browserFlags], ...(executablePath === undefined ? {} : { executablePath }) },
  },
  webServer: {
    command: `"${process.execPath}" e2e/server.mjs`,
    cwd: "..",
    url: `http://127.0.0.1:${sites[0]?.port}`, // it answers when all sites do
    reuseExistingServer: false,
    timeout: 600_000,
    stdout: "pipe",
    gracefulShutdown: { signal: "SIGTERM", timeout: 60_000 },
    env: {
      E2E_PORTS: process.env.E2E_PORTS ?? "",
      OHMSWORTH_TODAY: process.env.OHMSWORTH_TODAY,
    },
  },
});
