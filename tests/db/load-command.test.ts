import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { closeDatabase } from "@/db/close-database";
import { runLoad, runLoadFromSource } from "./bundled-command";
import { csv, fileFolder, job, shopDocument, startAfresh, unit } from "./intake-files";

const files = fileFolder();
const path = (name: string) => join(files.folder, name);

beforeAll(async () => {
  await startAfresh();
  writeFileSync(path("shop.json"), JSON.stringify(shopDocument));
  writeFileSync(path("units.csv"), csv([unit("A1"), unit("A2")]));
  writeFileSync(path("jobs.csv"), csv([job("J1", "A1"), job("J2", "A2", { component: "flux_valve" })]));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

test("files are loaded in the order in which they build on each other, and the one that is refused says why", () => {
  const { status, stdout } = runLoadFromSource(path("jobs.csv"), path("units.csv"), path("shop.json"));
  expect(stdout.split("\n").map((line) => line.replace(`${files.folder}/`, ""))).toEqual([
    "shop.json: added as load 1, 1 rows of shop: 1 new, 0 changed, 0 already here, 0 with problems.",
    "units.csv: added as load 2, 2 rows of units: 2 new, 0 changed, 0 already here, 0 with problems.",
    "jobs.csv: refused, 2 rows of jobs: 1 new, 0 changed, 0 already here, 1 with problems. Nothing was added.",
    '  row 3: component "flux_valve" is not a component of the catalogue. Use the key of a component in the catalogue.',
    "Correct these rows, or add --set-aside to load the good rows and keep these aside.",
    "",
  ]);
  expect(status).toBe(1);
});

test("a refused file goes in with its bad rows set aside, and comes out again", () => {
  const added = runLoad("--set-aside", path("jobs.csv"));
  expect([added.status, added.stdout]).toEqual([0, expect.stringContaining("added as load 3, 2 rows of jobs: 1 new")]);
  expect(runLoad(path("jobs.csv")).stdout).toContain("as load 3; all 2 rows are here. Nothing was changed.");
  const back = runLoad("--take-back", "3");
  expect([back.status, back.stdout]).toEqual([0, "Load 3 is taken back.\n  Removed: 1 × job (job J1)\n"]);
});

test.each([
  [[], 2, "Name the files to load."],
  [["--kind", "cars", "x.csv"], 2, "--kind: one of"],
  [["--take-back", "last"], 2, "--take-back: the number of a load, not last."],
  [["--colour", "x.csv"], 2, "--colour"],
  [["none.csv"], 1, "none.csv: there is no such file, or it may not be read."],
])("%j ends with %i and says what is wrong", (words, status, message) => {
  const read = runLoad(...words);
  expect([read.status, read.stderr]).toEqual([status, expect.stringContaining(message)]);
});
