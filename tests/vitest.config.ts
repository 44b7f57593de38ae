import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const root = fileURLToPath(new URL("..", import.meta.url));

/** Two projects: `unit` needs nothing but Node; `database` needs a real PostgreSQL, which its global set-up provides. */
export default defineConfig({
  root,
  resolve: { alias: { "@": root.replace(/\/$/, "") } },
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: "unit",
          include: ["tests/**/*.test.ts"],
          exclude: ["tests/db/**", "tests/promises/**"],
          testTimeout: 30_000,
        },
      },
      {
        extends: true,
        test: {
          name: "database",
          include: ["tests/db/**/*.test.ts", "tests/promises/**/*.test.ts"],
          globalSetup: ["tests/database-server.ts"],
          fileParallelism: false,
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
