// npm run reference: runs every program of this folder that made a reference file, and says whether it still makes the
// same numbers. With --write the files are replaced. The tests read the files, so they need neither R nor Python.
import { spawnSync } from "node:child_process";
import { copyFileSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import process from "node:process";
import { fileURLToPath } from "node:url";
import { gunzipSync } from "node:zlib";

const folder = fileURLToPath(new URL(".", import.meta.url));

/** Each program gets the files to write as its arguments. It comes after those whose files it reads. */
const programs = [
  { run: ["Rscript", "survival.R"], makes: ["survival-from-r.csv"] },
  { run: ["Rscript", "distributions.R"], makes: ["distributions-from-r.csv"] },
  { run: ["Rscript", "reporting-delay.R"], makes: ["reporting-delay-from-r.csv"] },
  { run: ["node", "demo-lives.ts"], makes: ["data/demo_lives.csv.gz", "data/demo_component_types.csv"] },
  { run: ["Rscript", "demo-survival.R"], makes: ["demo-from-r.csv.gz"] },
  { run: ["python3", "tails.py"], makes: ["tails.tsv"] },
];

const versions = [
  ["node", ["--version"]],
  ["Rscript", ["-e", 'cat(R.version.string, "; survival", format(packageVersion("survival")), "\\n")']],
  ["python3", ["-c", 'import sys, mpmath; print("Python", sys.version.split()[0], "; mpmath", mpmath.__version__)']],
];

function main() {
  const write = process.argv.includes("--write");
  for (const [program, words] of versions) {
    const { stdout, status } = spawnSync(program, words, { encoding: "utf8" });
    if (status !== 0)
      throw new Error(
        `${program} does not run here, or lacks a package. On Debian: apt-get install r-base-core r-cran-survival python3-mpmath`,
      );
    console.log(stdout.trim());
  }
  const made = mkdtempSync(join(tmpdir(), "ohmsworth-reference-"));
  try {
    const changed = programs.filter((program) => !remade(program, made, write));
    if (changed.length > 0 && !write) {
      console.error("Some numbers changed. To keep the new ones: npm run reference -- --write");
      process.exitCode = 1;
    }
  } finally {
    rmSync(made, { recursive: true, force: true });
  }
}

/** Whether the program made again what is kept. */
function remade({ run: [program, script], makes }, made, write) {
  const targets = makes.map((name) => join(made, name.replaceAll("/", "-")));
  const words = program === "node" ? ["--import", "tsx"] : [];
  const { status } = spawnSync(program, [...words, join("tests/reference", script), ...targets], {
    cwd: join(folder, "../.."),
    stdio: ["ignore", "inherit", "inherit"],
  });
  if (status !== 0) throw new Error(`${script} failed`);
  const verdicts = makes.map((name, index) => {
    const kept = join(folder, name);
    const verdict = compare(linesOf(kept), linesOf(targets[index]));
    console.log(`${script.padEnd(18)} ${name.padEnd(30)} ${verdict}`);
    if (write) copyFileSync(targets[index], kept);
    return verdict.startsWith("same");
  });
  return verdicts.every(Boolean);
}

/** Lines without those that name versions. A file that is not there yet has none. */
function linesOf(path) {
  try {
    const bytes = readFileSync(path);
    const text = path.endsWith(".gz") ? gunzipSync(bytes).toString("utf8") : bytes.toString("utf8");
    return text.split("\n").filter((line) => line !== "" && !line.startsWith("#"));
  } catch (error) {
    if (error.code === "ENOENT") return [];
    throw error;
  }
}

/** Text cell by cell; numbers may differ in their last digits, since another build of R rounds otherwise. */
function compare(before, after) {
  if (before.length !== after.length) return `${before.length} lines became ${after.length}`;
  let worst = 0;
  for (const [index, line] of before.entries()) {
    const [old, now] = [line.split(/[\t,]/), after[index].split(/[\t,]/)];
    for (const [column, cell] of old.entries()) {
      if (cell === now[column]) continue;
      const difference = Math.abs(Number(now[column]) / Number(cell) - 1);
      if (!(difference < 1e-8)) return `line ${index + 1}: ${line} became ${after[index]}`;
      worst = Math.max(worst, difference);
    }
  }
  return worst === 0 ? "same to the last digit" : `same to ${worst.toExponential(0)} relative`;
}

try {
  main();
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
}
