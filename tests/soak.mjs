// npm run soak: the long tests of what may never happen to a file, all of them. `npm run soak -- kills` or `-- rows` runs one part.
import { spawnSync } from "node:child_process";
import process from "node:process";

const parts = {
  rows: { file: "tests/db/adding-up.test.ts", seeds: "1-20" },
  kills: { file: "tests/db/killed/killed-loads.test.ts", seeds: "1-50" },
  people: { file: "tests/db/claims/interleavings.test.ts", seeds: "1-1000" },
};

const [asked, seeds] = process.argv.slice(2);
if (asked !== undefined && !(asked in parts)) {
  console.error(
    `Say "npm run soak", or "npm run soak -- PART SEEDS" with ${Object.keys(parts).join(" or ")} and seeds such as 1-20.`,
  );
  process.exit(2);
}
let failed = false;
for (const [name, { file, seeds: usual }] of Object.entries(parts)) {
  if (asked !== undefined && asked !== name) continue;
  const words = [
    "node_modules/vitest/vitest.mjs",
    "run",
    "--config",
    "tests/vitest.config.ts",
    "--project",
    "database",
  ];
  const { status } = spawnSync(process.execPath, [...words, "--reporter=verbose", file], {
    stdio: "inherit",
    env: { ...process.env, SOAK_SEEDS: seeds ?? usual },
  });
  failed ||= status !== 0;
}
process.exit(failed ? 1 : 0);
