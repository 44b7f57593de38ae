import { availableParallelism } from "node:os";
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import { LongestFirst } from "./longest-first.mjs";
import { workersOfDatabaseTests } from "./workers.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));

/** Tests that write whole demos, draw whole packets, simulate, or fuzz at length: not for every save, so `npm run check` leaves them out. */
const long = [
  "tests/synthetic-data/**/*.test.ts",
  "tests/claims/packet-pdf.test.ts",
  "tests/claims/packet-outside.test.ts",
  "tests/format/csv-in-spreadsheet.test.ts",
  "tests/statistics/coverage.test.ts",
  "tests/statistics/demo-against-r.test.ts",
  "tests/statistics/life/interval-coverage.test.ts",
  "tests/calendar/term.test.ts",
  "tests/forecast/demo-bands.test.ts",
  "tests/intake/tables/fuzzed-rows.test.ts",
  "tests/intake/tables/hostile-archives.test.ts",
];

const globalSetup = ["tests/temporary-folder.ts"];

/** All that there are: left to itself vitest keeps one back, which of two is half. */
const maxWorkers = availableParallelism();

/**
 * Without isolation a worker reads each module once, not once for each file of tests, which was most of the time: a module
 * of tests must leave nothing behind for the next file.
 *
 * `unit` and `long` need nothing but Node; `database` needs a real PostgreSQL, which its global set-up provides.
 */
export default defineConfig({
  root,
  resolve: { alias: { "@": root.replace(/\/$/, "") } },
  test: {
    sequence: { sequencer: LongestFirst },
    projects: [
      {
        extends: true,
        test: {
          name: "unit",
          include: ["tests/**/*.test.ts"],
          exclude: ["tests/db/**", ...long],
          globalSetup,
          isolate: false,
          maxWorkers,
          testTimeout: 30_000,
        },
      },
      {
        extends: true,
        test: { name: "long", include: long, globalSetup, isolate: false, maxWorkers, testTimeout: 240_000 },
      },
      {
        extends: true,
        test: {
          name: "database",
          include: ["tests/db/**/*.test.ts"],
          globalSetup: ["tests/database-server.ts"],
          setupFiles: ["tests/own-database.ts"],
          isolate: false,
          maxWorkers: workersOfDatabaseTests,
          testTimeout: 300_000,
          hookTimeout: 300_000,
        },
      },
    ],
  },
});
