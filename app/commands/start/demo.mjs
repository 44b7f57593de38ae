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
  "parts.csv",
  "units.csv",
  "contracts.csv",
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
export async function loadDemoIfEmpty({ url, isEmpty }, { folder, size, signal, wordsFor = fromSource }) {
  const note = join(folder, "unfinished");
  const mark = createHash("sha256").update(url).digest("hex");
  const [noted, notedEnd] = existsSync(note) ? readFileSync(note, "utf8").split(" ") : [];
  const cutOff = noted === mark;
  if (!cutOff && !(await isEmpty())) return;
  const end = cutOff && notedEnd ? notedEnd : demoEnd();
  say("the database is empty: writing the files of an invented company …");
  mkdirSync(folder, { recursive: true });
  writeFileSync(note, `${mark} ${end}`);
  const sized = size === undefined ? [] : ["--size", String(size)];
  await runNode(
    "Writing the demo company",
    [...wordsFor("synthetic-data/write-files.ts"), "--to", folder, "--until", end, ...sized],
    {
      signal,
    },
  );
  say("loading them, as you would load your own …");
  const paths = files.map((name) => join(folder, name)).filter((path) => existsSync(path));
  await runNode("Loading the demo company", [...wordsFor("app/commands/load.ts"), "--set-aside", ...paths], {
    signal,
    environment: { DATABASE_URL: url },
  });
  await runNode("Making the demo company's claims", [...wordsFor("app/commands/demo-claims.ts"), end], {
    signal,
    environment: { DATABASE_URL: url },
  });
  await runNode("Counting the demo company's shelf", [...wordsFor("app/commands/demo-stock.ts"), end], {
    signal,
    environment: { DATABASE_URL: url },
  });
  await runNode("Opening jobs of the demo company", [...wordsFor("app/commands/demo-open-jobs.ts"), end], {
    signal,
    environment: { DATABASE_URL: url },
  });
  await runNode("Letting the demo company's people in", [...wordsFor("app/commands/demo-people.ts")], {
    signal,
    environment: { DATABASE_URL: url },
  });
  rmSync(note);
}

/** What Node is given to run one of these programs. */
const fromSource = (program) => ["--import", "tsx", program];

/** The last day of the demo's records: today, so that filing windows are open; the demo's models and terms are written for 2026. */
function demoEnd() {
  const today = process.env.OHMSWORTH_TODAY || new Date().toISOString().slice(0, 10);
  return today < "2026-01-01" ? "2026-01-01" : today > "2026-12-31" ? "2026-12-31" : today;
}
