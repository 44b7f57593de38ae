import type { PromiseKey } from "./promises";

interface Held {
  readonly file: string;
  /** Its title as it stands in the file, or the beginning of it. */
  readonly test: string;
}

/** Which test breaks when a promise does. A promise without one is not kept yet, and the table says so. */
export const heldBy: Partial<Readonly<Record<PromiseKey, readonly Held[]>>> = {
  D1: [
    { file: "tests/db/killed/killed-loads.test.ts", test: "test" },
    {
      file: "tests/db/import-broken-off.test.ts",
      test: "what a load that died has left behind is removed by the next",
    },
  ],
  D2: [
    {
      file: "tests/db/embedded/ensure-server.test.ts",
      test: "a server that was killed outright starts again with every committed row",
    },
    { file: "tests/db/in-transaction.test.ts", test: "a change reports after it is on disk" },
  ],
  D4: [
    {
      file: "tests/db/in-transaction.test.ts",
      test: "under a hail of cuts no batch of five is ever split, and every promise settles",
    },
    { file: "tests/db/import-broken-off.test.ts", test: "is ended at %s leaves nothing" },
  ],
  D5: [
    { file: "tests/db/answer-once.test.ts", test: "the same request fifty times at once is done once" },
    { file: "tests/db/jobs-over-http.test.ts", test: "fifty at a time have one effect" },
    { file: "tests/db/claims/claim-concurrency.test.ts", test: "the same sending fifty times at once is sent once" },
  ],
  D6: [
    { file: "tests/db/import.test.ts", test: "bytes that were loaded change nothing and name the first load" },
    { file: "tests/db/rows-in-any-order.test.ts", test: "rows of one file mean the same in whatever order" },
    { file: "tests/db/other-forms.test.ts", test: "after the same rows as CSV: nothing new, nothing changed" },
  ],
  D7: [
    {
      file: "tests/db/claims/interleavings.test.ts",
      test: "rounds no write is lost without a word",
    },
    { file: "tests/db/coverage-policies.test.ts", test: "a saving over somebody else's is kept apart" },
  ],
  D8: [
    {
      file: "tests/db/take-back.test.ts",
      test: "in whichever order loads are taken back, what is left is what the other files alone would have made",
    },
    { file: "tests/db/joins.test.ts", test: "loads of which one gave the serials can be taken back in any order" },
  ],
  D10: [
    {
      file: "tests/calendar/raw-day.test.ts",
      test: "an instant falls on the day at the service address, also across the change of clocks",
    },
    {
      file: "tests/calendar/term.test.ts",
      test: "20,000 random terms end where Temporal's arithmetic ends them, under both conventions",
    },
  ],
  D11: [
    {
      file: "tests/db/sheets-close.test.ts",
      test: "a clock that was put back a year neither closes before the request nor harms",
    },
  ],
  D12: [
    {
      file: "tests/db/counts-equal-rows.test.ts",
      test: "every estimator of every component gives the same from counts as from rows",
    },
    { file: "tests/db/counts.test.ts", test: "windows and cells equal a count from the raw rows in another language" },
  ],
  D13: [
    { file: "tests/db/impossible-states.test.ts", test: "test" },
    { file: "tests/db/impossible-intake.test.ts", test: "test" },
    { file: "tests/db/claims/impossible-claims.test.ts", test: "a sum that somebody changed by hand is found" },
  ],
  F1: [
    { file: "tests/intake/tables/fuzzed-rows.test.ts", test: "10,000 rows in, 10,000 rows out, cell by cell" },
    { file: "tests/db/adding-up.test.ts", test: "every row of 10,000 dirty ones (seed %i) has one fate" },
  ],
  F2: [{ file: "tests/intake/tables/encodings.test.ts", test: "the same text in %s gives the same rows" }],
  F3: [{ file: "tests/intake/matching/spreadsheet-damage.test.ts", test: "test" }],
  F4: [
    {
      file: "tests/intake/tables/hostile-archives.test.ts",
      test: "ten gigabytes claimed in a file of a few kilobytes",
    },
    { file: "tests/intake/tables/hostile-archives.test.ts", test: "sixty-five thousand parts" },
  ],
  F5: [
    { file: "tests/intake/tables/damaged-workbooks.test.ts", test: "cut off at any of 200 places" },
    { file: "tests/intake/tables/other-files.test.ts", test: "a CSV file named as a workbook is read as what it is" },
  ],
  F6: [{ file: "tests/format/csv-text.test.ts", test: "test" }],
  F7: [
    { file: "tests/db/photos-read.test.ts", test: "what is no picture is refused, each in its own words and soon" },
    { file: "tests/db/photos-job.test.ts", test: "the received bytes are never handed out" },
  ],
  S5: [{ file: "tests/db/photos-job.test.ts", test: "a form from another site is turned away" }],
  P2: [{ file: "tests/db/photos-read.test.ts", test: "nothing but pixels is kept" }],
  P3: [
    { file: "tests/db/claims/altered-evidence.test.ts", test: "test" },
    { file: "tests/db/photos-job.test.ts", test: "a flipped byte no longer has the hash that is kept beside it" },
    {
      file: "tests/db/claims/claim-life.test.ts",
      test: "what was sent is kept byte for byte under its hash, whatever becomes of the job",
    },
  ],
  P6: [{ file: "tests/app/health.test.ts", test: "the place of a request in the log" }],
  O1: [
    {
      file: "tests/db/backup/backup.test.ts",
      test: "a restored database is the one that was backed up, to the last row and number",
    },
    {
      file: "tests/db/backup/backup.test.ts",
      test: "a trial restores the backup, removes its database and is kept with what it found",
    },
  ],
  O2: [
    {
      file: "tests/db/backup/backup.test.ts",
      test: "a promise that the rows break is named, and the database is empty again",
    },
  ],
  O3: [
    {
      file: "tests/db/readiness.test.ts",
      test: "ready with a database of this schema; behind by one step it is not, and still alive",
    },
    {
      file: "tests/db/readiness.test.ts",
      test: "a database that is held up for longer than two seconds is told, not waited for",
    },
  ],
  O7: [
    {
      file: "tests/db/connection.test.ts",
      test: "without the setting, or with an empty one, the embedded server is meant",
    },
  ],
};
