// npm test: everything that must hold before a change is taken, in the order in which it fails fastest.
// Plain JavaScript with nothing but Node's own modules, because it runs before anything is installed.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import process from "node:process";
import { buildIfChanged } from "../app/commands/start/build.mjs";
import { installIfMissing } from "../app/commands/start/install.mjs";
import { refuseOldNode } from "../app/commands/start/node-version.mjs";
import { enterProjectFolder } from "../app/commands/start/project-folder.mjs";
import { runNode } from "../app/commands/start/run-step.mjs";
import { Refusal, say } from "../app/commands/start/say.mjs";
import { stopSignal } from "../app/commands/start/stop-signal.mjs";
import { installBrowserIfMissing } from "./run/browser.mjs";
import { countsIn } from "./run/counts.mjs";

const program = {
  next: "node_modules/next/dist/bin/next",
  tsc: "node_modules/typescript/bin/tsc",
  biome: "node_modules/@biomejs/biome/bin/biome",
  vitest: "node_modules/vitest/vitest.mjs",
  playwright: "node_modules/@playwright/test/cli.js",
};

/** Each stage runs with our own output, so that the runners' closing lines are seen, and leaves its counts in `reports`. */
const stages = {
  async types(signal) {
    await runNode("The list of routes", [program.next, "typegen"], { signal }); // the type check reads it
    await runNode("The type check", [program.tsc, "--noEmit"], { signal });
  },
  lint: (signal) => runNode("The lint", [program.biome, "check", "."], { signal }),
  unit: (signal, reports) => vitest("unit", ["unit", "long"], signal, reports),
  database: (signal, reports) => vitest("database", ["database"], signal, reports),
  build: (signal) => buildIfChanged(signal),
  browser: (signal, reports) =>
    runNode(
      "The browser tests",
      [program.playwright, "test", "--config", "e2e/playwright.config.ts", "--reporter=list,json"],
      {
        signal,
        environment: {
          PLAYWRIGHT_JSON_OUTPUT_FILE: join(reports, "browser.json"),
          OHMSWORTH_NIGHTLY: "off", // nothing may begin to look over the data in the middle of a test
        },
      },
    ),
};

function vitest(stage, projects, signal, reports) {
  const words = ["run", "--config", "tests/vitest.config.ts", ...projects.flatMap((name) => ["--project", name])];
  const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${join(reports, `${stage}.json`)}`];
  return runNode(`The ${stage} tests`, [program.vitest, ...words, ...reporters], { signal });
}

async function run() {
  refuseOldNode();
  enterProjectFolder();
  const chosen = chosenStages(process.argv.slice(2));
  const signal = stopSignal();
  await installIfMissing(signal);
  if (chosen.includes("browser")) await installBrowserIfMissing(signal);
  const reports = mkdtempSync(join(tmpdir(), "ohmsworth-reports-"));
  try {
    for (const name of chosen) {
      say(`— ${name} —`);
      await stages[name](signal, reports);
    }
  } catch (error) {
    if (error?.name !== "AbortError") say(`failed at ${error instanceof Refusal ? error.message : error.stack}`);
    process.exitCode = 1;
  } finally {
    const { passed, failed, skipped } = countsIn(reports);
    rmSync(reports, { recursive: true, force: true });
    if (skipped > 0) console.log(`${skipped} skipped`);
    console.log(`${passed} passed, ${failed} failed`);
  }
}

function chosenStages(words) {
  const names = Object.keys(stages);
  if (words.length === 0) return names;
  const [option, name] = words;
  if (option === "--only" && words.length === 2 && names.includes(name)) return [name];
  throw new Refusal(`Say "npm test", or "npm test -- --only STAGE" with one of: ${names.join(", ")}.`);
}

run().then(
  () => process.exit(),
  (error) => {
    console.error(error instanceof Refusal ? `ohmsworth: ${error.message}` : error);
    process.exit(1);
  },
);
