// Files of other programs by command: looked at, the guess written to a file, corrected there, and loaded by it.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { sql } from "drizzle-orm";
import { afterAll, beforeAll, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { dirtyFile } from "@/e2e/foreign-files";
import { runLoad } from "./bundled-command";
import { batchOf, csv, fileFolder, shopDocument, startAfresh } from "./intake-files";

const files = fileFolder();
const path = (name: string) => join(files.folder, name);

beforeAll(async () => {
  await startAfresh();
  batchOf(await files.load(JSON.stringify(shopDocument)));
  writeFileSync(path("office.csv"), dirtyFile("office.csv").buffer);
  writeFileSync(path("next.csv"), dirtyFile("next.csv", "Y").buffer);
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

async function jobs(): Promise<number | undefined> {
  const [row] = await readOnly((db) => db.rows<{ rows: number }>(sql`select count(*)::integer as rows from jobs`));
  return row?.rows;
}

test("--look says the form and every column with its reason and what is open, and adds nothing", async () => {
  const { status, stdout } = runLoad("--look", path("office.csv"));
  expect(stdout).toContain("office.csv: 13 rows under 17 columns, jobs.");
  expect(stdout).toContain("Windows-1252: the text is not valid UTF-8.");
  expect(stdout).toMatch(/^ {2}Job No → job_number \(.+\)\. .+\.$/m);
  expect(stdout).toMatch(/^ {2}Unit price → part-lines\.unit_cost \(.+\)\. .+\.$/m);
  expect(stdout.match(/^ {2}.+ → /gm), "a line for each column").toHaveLength(17);
  expect([status, await jobs()]).toEqual([0, 0]);
});

test("--guess writes what --matching reads; corrected, the file goes in by it", async () => {
  const guess = path("guess.json");
  expect(runLoad("--look", path("office.csv"), "--guess", guess).stdout).toContain(`Written to ${guess}.`);
  const { form, matching } = JSON.parse(readFileSync(guess, "utf8"));
  expect(form).toMatchObject({ encoding: "windows-1252", delimiter: ";", headerRow: 2 });
  matching.words.component = { pump: "drain_pump", brd: "control_board" };
  matching.columns.find(({ source }: { source: string }) => source === "Fault found").target = "cause";
  writeFileSync(guess, JSON.stringify({ form, matching }));

  const refused = runLoad(path("office.csv"), "--matching", guess);
  expect(refused.stdout).toMatch(/refused, 13 rows of jobs: 9 new, .* 1 with problems, 3 left out/);
  expect(refused.stdout).toMatch(/row 12: Date completed "31-Feb-26" .+/);
  expect([refused.status, await jobs()]).toEqual([1, 0]);

  const added = runLoad(path("office.csv"), "--matching", guess, "--set-aside");
  expect(added.stdout).toMatch(/added as load \d+, 13 rows of jobs: 9 new/);
  expect([added.status, await jobs()]).toEqual([0, 9]);
});

test("the next file with that header needs no matching", async () => {
  const { status, stdout } = runLoad(path("next.csv"), "--set-aside");
  expect(stdout).toContain("next.csv: read by the matching of the last file with this header.");
  expect([status, await jobs()]).toEqual([0, 18]);
});

test("a header that nobody has matched is not guessed at in silence", async () => {
  writeFileSync(path("unmatched.csv"), csv([{ Ticket: "1", Broken: "pump" }]));
  const { status, stdout } = runLoad(path("unmatched.csv"));
  expect(stdout).toContain("no file with this header was matched before. Nothing was added.");
  expect(stdout).toContain(`npm run load -- --look ${path("unmatched.csv")} --guess matching.json`);
  expect([status, await jobs()]).toEqual([1, 18]);
});

test.each([
  ["{", /damaged\.json: this is not JSON: /],
  [JSON.stringify({ matching: {} }), /this is no matching\.\n {2}form: /],
  [
    JSON.stringify({
      form: { encoding: "ebcdic" },
      matching: { kind: "cars", columns: [{ source: "Ticket", target: "engine" }] },
    }),
    / {2}form\.encoding: .+\n(.*\n)* {2}matching\.kind: /,
  ],
])("the matching %s is refused with its places", (text, message) => {
  writeFileSync(path("damaged.json"), text);
  const read = runLoad(path("office.csv"), "--matching", path("damaged.json"));
  expect([read.status, read.stderr]).toEqual([1, expect.stringMatching(message)]);
});

test.each([
  [["--guess", "g.json", "x.csv"], 2, "--guess: only together with --look."],
  [["--look", "a.csv", "b.csv", "--guess", "g.json"], 2, "A matching belongs to one file; name one."],
  [["--look", "none.csv"], 1, "none.csv: there is no such file, or it may not be read."],
  [["x.csv", "--matching", "none.json"], 1, "x.csv: there is no such file"],
])("%j ends with %i and says what is wrong", (words, status, message) => {
  const read = runLoad(...words);
  expect([read.status, read.stderr]).toEqual([status, expect.stringContaining(message)]);
});

test("--look at a picture says what it is", () => {
  writeFileSync(path("photo.csv"), Buffer.from("89504e470d0a1a0a0000000d49484452", "hex"));
  const { status, stdout } = runLoad("--look", path("photo.csv"));
  expect([status, stdout]).toEqual([1, expect.stringMatching(/it can’t be read\.\n.*This is a picture \(PNG\)\./)]);
});
