import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { defineConfig } from "@playwright/test";
import { findChromium } from "./chromium.mjs";

// Chosen once: the processes that run the tests read this file again and must come to the same number.
process.env.E2E_PORT ??= String(await freePort());
// Where the server writes the address of its database, for tests that run a command against it.
process.env.E2E_DATABASE_NOTE ??= join(tmpdir(), `ohmsworth-e2e-database-${process.env.E2E_PORT}`);
// Last day of the invented company's records: days left are counted from it, whatever day the tests run.
process.env.OHMSWORTH_TODAY = "2026-10-31";
const baseURL = `http://127.0.0.1:${process.env.E2E_PORT}`;
const executablePath = await findChromium();

/** No sandbox only where there cannot be one (as root); and nothing that looks for hosts outside by itself. */
const flags = [
  ...(process.getuid?.() === 0 ? ["--no-sandbox"] : []),
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--disable-dev-shm-usage",
];

export default defineConfig({
  testDir: ".",
  outputDir: "../test-results",
  workers: 1,
  fullyParallel: false,
  forbidOnly: true,
  timeout: 60_000,
  reporter: "list",
  use: {
    baseURL,
    locale: "en-US",
    timezoneId: "America/Chicago",
    screenshot: "only-on-failure",
    launchOptions: { args: flags, ...(executablePath === undefined ? {} : { executablePath }) },
  },
  webServer: {
    command: `"${process.execPath}" e2e/server.mjs`,
    cwd: "..",
    url: baseURL,
    reuseExistingServer: false,
    timeout: 600_000,
    stdout: "pipe",
    gracefulShutdown: { signal: "SIGTERM", timeout: 60_000 },
    env: {
      PORT: process.env.E2E_PORT,
      E2E_DATABASE_NOTE: process.env.E2E_DATABASE_NOTE,
      OHMSWORTH_TODAY: process.env.OHMSWORTH_TODAY,
    },
  },
});

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once("error", reject);
    probe.listen(0, "127.0.0.1", () => {
      const address = probe.address();
      probe.close(() =>
        address !== null && typeof address === "object" ? resolve(address.port) : reject(new Error("no free port")),
      );
    });
  });
}
