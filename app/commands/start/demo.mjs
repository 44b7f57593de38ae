import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { runNode } from "./run-step.mjs";
import { say } from "./say.mjs";

/** In the order in which each refers to those before it. A file that the generator did not write is left out. */
const files = [
  "shop.json",
  "policies.json",
  "components.csv",
  "units.csv",
  "jobs.csv",
  "part-lines.csv",
  "readings.csv",
  "ranges.csv",
  "photos.csv",
];

/**
 * Fills an empty database with the invented company, through the same command that users load their files with.
 * A note lies in the folder until all files are in, so that a load cut off half-way goes on at the next start: what is
 * in already changes nothing when it comes twice. Some rows are wrong on purpose: they are kept aside with their reasons.
 */
export async function loadDemoIfEmpty({ url, isEmpty }, { folder, size, signal }) {
  const note = join(folder, "unfinished");
  const mark = createHash("sha256").update(url).digest("hex");
  const cutOff = existsSync(note) && readFileSync(note, "utf8") === mark;
  if (!cutOff && !(await isEmpty())) return;
  say("the database is empty: writing the files of an invented company …");
  mkdirSync(folder, { recursive: true });
  writeFileSync(note, mark);
  const sized = size === undefined ? [] : ["--size", String(size)];
  const tsx = ["--import", "tsx"];
  await runNode("Writing the demo company", [...tsx, "synthetic-data/write-files.ts", "--to", folder, ...sized], {
    signal,
  });
  say("loading them, as you would load your own …");
  const paths = files.map((name) => join(folder, name)).filter((path) => existsSync(path));
  await runNode("Loading the demo company", [...tsx, "app/commands/load.ts", "--set-aside", ...paths], {
    signal,
    environment: { DATABASE_URL: url },
  });
  rmSync(note);
}
