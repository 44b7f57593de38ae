// npm run soak: the long tests of what may never happen to a file or a company, all of them. `npm run soak -- kills`, or
// another part's name, runs that one; what follows the name goes to it.
import { spawnSync } from "node:child_process";
import process from "node:process";

/** Test files run longer by a setting of the environment, or programs of their own. */
const parts = {
  fuzz: { file: "tests/intake/tables/fuzzed-rows.test.ts", project: "long", setting: "SOAK_SEEDS", usual: "1-20" },
  rows: { file: "tests/db/adding-up.test.ts", setting: "SOAK_SEEDS", usual: "1-20" },
  answers: { file: "tests/db/killed/acknowledged.test.ts", setting: "SOAK_SEEDS", usual: "1-20" },
  kills: { file: "tests/db/killed/killed-loads.test.ts", setting: "SOAK_SEEDS", usual: "1-50" },
  bytes: { file: "tests/db/bulk.test.ts", setting: "SOAK_SEEDS", usual: "1-20" },
  counts: { file: "tests/db/counts-equal-rows.test.ts", setting: "DEMO_SIZE", usual: "1" },
  orders: { file: "tests/db/take-back.test.ts", setting: "EVERY_ORDER", usual: "yes" },
  people: { file: "tests/db/claims/interleavings.test.ts", setting: "SOAK_SEEDS", usual: "1-1000" },
  upgrade: { file: "tests/db/upgrade-under-load.test.ts", setting: "UPGRADE_JOBS", usual: "100000" },
  load: { program: "tests/load/run.ts" },
  stop: { program: "tests/load/stop.ts" },
  flood: { program: "tests/load/flood.ts" },
  disk: { program: "tests/load/full-disk.ts" },
  log: { program: "tests/load/log.ts" },
  proxy: { program: "tests/load/proxy.ts" },
  sheet: { browser: "e2e/phone-soak.spec.ts", setting: "SOAK_SEEDS", usual: "1-200" },
};

const [asked, ...words] = process.argv.slice(2);
if (asked !== undefined && !(asked in parts)) {
  console.error(
    `Say "npm run soak", or "npm run soak -- PART" with ${Object.keys(parts).join(", ")}; after fuzz, rows, answers, kills, bytes or people seeds such as 1-20, after sheet how many walks, after upgrade how many jobs, after counts which part of the company, after load --jobs, --users, --minutes.`,
  );
  process.exit(2);
}

let failed = false;
for (const [name, part] of Object.entries(parts)) {
  if (asked !== undefined && asked !== name) continue;
  const { status } =
    part.program !== undefined
      ? runProgram(part.program)
      : part.browser !== undefined
        ? runBrowser(part)
        : runTest(part);
  failed ||= status !== 0;
}
process.exit(failed ? 1 : 0);

function runTest({ file, project = "database", setting, usual }) {
  const vitest = ["node_modules/vitest/vitest.mjs", "run", "--config", "tests/vitest.config.ts", "--project", project];
  return run([...vitest, "--reporter=verbose", file], { [setting]: words[0] ?? usual });
}

/** "200" walks seeds 1 to 200. */
function runBrowser({ browser, setting, usual }) {
  const [seeds = usual] = words;
  const playwright = ["node_modules/@playwright/test/cli.js", "test", "--config", "e2e/playwright.config.ts", browser];
  return run(playwright, { [setting]: seeds.includes("-") ? seeds : `1-${seeds}` });
}

function runProgram(program) {
  return run(["--import", "tsx", program, ...words], {});
}

function run(command, settings) {
  return spawnSync(process.execPath, command, { stdio: "inherit", env: { ...process.env, ...settings } });
}
