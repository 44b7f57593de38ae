import type { Held } from "./held";
import { heldOfPeople } from "./held-of-people";
import { heldOfRunning } from "./held-of-running";
import { heldOfSafety } from "./held-of-safety";
import type { PromiseKey } from "./promises";

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
    {
      file: "tests/db/killed/acknowledged.test.ts",
      test: "of all jobs that were answered as added or opened none is lost, and each sent again is answered as before",
    },
  ],
  D3: [
    {
      file: "tests/db/killed/restart-mid-load.test.ts",
      test: "down at point %i and up again: all of the load or nothing, and work goes on within ten seconds",
    },
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
    {
      file: "tests/db/sheets-close.test.ts",
      test: "fifty times at once with one key closes once; with another body or without a key it is refused",
    },
    {
      file: "tests/db/killed/acknowledged.test.ts",
      test: "of all jobs that were answered as added or opened none is lost, and each sent again is answered as before",
    },
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
  D9: [
    {
      file: "tests/app/no-room.test.ts",
      test: "a full disk is told from other failures, however deep it stands, and answered with 507 and what to do",
    },
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
    { file: "tests/coverage/any-zone.test.ts", test: "all cases are answered alike in %s" },
  ],
  D11: [
    {
      file: "tests/db/sheets-close.test.ts",
      test: "a clock that was put back a year neither closes before the request nor harms",
    },
    { file: "tests/app/weekly-trial.test.ts", test: "a clock that is put back a year for good ends no weeks" },
    { file: "tests/db/clock-jumps.test.ts", test: "test" },
    {
      file: "tests/db/claims/claim-life.test.ts",
      test: "a claim stands where its last event puts it, whatever the clock said meanwhile",
    },
    {
      file: "tests/db/people/second-factor.test.ts",
      test: "while the clock is a year ahead or a day behind no code of the phone opens, and none opens twice when it is put right",
    },
    {
      file: "tests/db/backup/expire-backups.test.ts",
      test: "a backup that was made by a clock a year ahead takes none of the others with it",
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
  D14: [
    { file: "tests/db/upgrade-under-load.test.ts", test: "s and every row is there" },
    { file: "tests/db/backup/backup.test.ts", test: "a backup of the first schema comes back in today's" },
  ],
  F1: [
    { file: "tests/intake/tables/fuzzed-rows.test.ts", test: "10,000 rows in, 10,000 rows out, cell by cell" },
    { file: "tests/db/adding-up.test.ts", test: "every dirty row (seed %i) has one fate" },
  ],
  F2: [{ file: "tests/intake/tables/encodings.test.ts", test: "the same text in %s gives the same rows" }],
  F3: [{ file: "tests/intake/matching/spreadsheet-damage.test.ts", test: "test" }],
  F4: [
    {
      file: "tests/intake/tables/hostile-archives.test.ts",
      test: "ten gigabytes claimed in a file of a few kilobytes",
    },
    { file: "tests/intake/tables/hostile-archives.test.ts", test: "sixty-five thousand parts" },
    { file: "tests/intake/tables/hostile-archives.test.ts", test: "shared texts without end" },
    { file: "tests/intake/tables/hostile-archives.test.ts", test: "archives within archives are not opened" },
    { file: "tests/intake/tables/hostile-archives.test.ts", test: "a part named %s" },
  ],
  F5: [
    { file: "tests/intake/tables/damaged-workbooks.test.ts", test: "cut off at any of 200 places" },
    { file: "tests/intake/tables/other-files.test.ts", test: "a CSV file named as a workbook is read as what it is" },
  ],
  F6: [
    { file: "tests/format/csv-text.test.ts", test: "test" },
    {
      file: "tests/format/csv-in-spreadsheet.test.ts",
      test: "finds no formula in a table of ours, whatever stands in its text, and every number is one",
    },
    {
      file: "tests/intake/matching/translate-row.test.ts",
      test: "%j, which stands behind an apostrophe there, is what it was",
    },
    {
      file: "e2e/words-that-would-run.spec.ts",
      test: "stand in files so that no spreadsheet runs them, and word for word in documents and packets",
    },
  ],
  F7: [
    { file: "tests/db/photos-read.test.ts", test: "what is no picture is refused, each in its own words and soon" },
    { file: "tests/db/photos-job.test.ts", test: "the received bytes are never handed out" },
  ],
  F8: [
    { file: "tests/db/file-names.test.ts", test: "lies under a random id, whatever its name, which is only shown" },
    {
      file: "tests/db/file-names.test.ts",
      test: "is downloaded under a name that cannot leave its folder or its header",
    },
  ],
  F9: [
    { file: "tests/db/files-work.test.ts", test: "a file is looked at in a process of its own, one task at a time" },
    { file: "tests/db/files-work.test.ts", test: "three files are worked on two at a time, and all are done" },
  ],
  ...heldOfSafety,
  P1: [
    {
      file: "tests/promises/what-is-held-of-people.test.ts",
      test: "every column that could hold a name is known either to name nobody or to be searched when a customer is erased",
    },
    {
      file: "tests/promises/what-is-held-of-people.test.ts",
      test: "no table has a column for a customer's name, birth, payment or address",
    },
  ],
  ...heldOfPeople,
  P2: [{ file: "tests/db/photos-read.test.ts", test: "nothing but pixels is kept" }],
  P3: [
    { file: "tests/db/claims/altered-evidence.test.ts", test: "test" },
    { file: "tests/db/photos-job.test.ts", test: "a flipped byte no longer has the hash that is kept beside it" },
    {
      file: "tests/db/claims/claim-life.test.ts",
      test: "what was sent is kept byte for byte under its hash, whatever becomes of the job",
    },
  ],
  P4: [
    {
      file: "tests/db/erasure.test.ts",
      test: "erased, the customer stands nowhere, others do, and every count is what it was",
    },
    { file: "tests/db/erasure.test.ts", test: "a backup from before, restored, is without the customer again" },
  ],
  P5: [
    {
      file: "tests/db/retention.test.ts",
      test: "each kind goes on the day after its last one, and not before; a trial removes nothing",
    },
    { file: "tests/db/retention.test.ts", test: "a photo stays while a claim on its job is open" },
    { file: "tests/db/people/sign-in-list.test.ts", test: "every try is in the list, and nothing that was typed" },
  ],
  P6: [
    { file: "tests/app/health.test.ts", test: "the place of a request in the log" },
    {
      file: "tests/app/hosting.test.ts",
      test: "one line of JSON an answer: kind of page, status and time, and no word, number or name that was asked for",
    },
    { file: "tests/db/errors-without-values.test.ts", test: "%s is told without its values" },
  ],
  P7: [
    { file: "tests/db/change-log.test.ts", test: "is refused, to the owner of the database and to any other role" },
    {
      file: "tests/db/site-role.test.ts",
      test: "what the site does is in the change log all the same, and a table of the same name before it changes nothing",
    },
    {
      file: "tests/app/actor.test.ts",
      test: "nobody is at work in the app but whoever has shown who they are",
    },
    { file: "tests/db/change-log.test.ts", test: "an entry that was altered past the guards is named by its link" },
    { file: "tests/db/change-log.test.ts", test: "fifty changes at once are links without a gap" },
    {
      file: "tests/db/change-log.test.ts",
      test: "a chain that was written anew is whole in itself, and not the one that a backup noted",
    },
  ],
  ...heldOfRunning,
};

/** Runs that are too long for every change, as `npm run soak` names them. */
export const wholeRuns: Partial<Readonly<Record<PromiseKey, string>>> = {
  D1: "npm run soak -- kills",
  S1: "npm run bench -- equal-times",
  S8: "npm run bench -- equal-times",
  D2: "npm run soak -- answers",
  D3: "SOAK_SEEDS=1-20 npx vitest run --config tests/vitest.config.ts tests/db/killed/restart-mid-load.test.ts",
  D7: "npm run soak -- people",
  D9: "npm run soak -- disk",
  D14: "npm run soak -- upgrade",
  F1: "npm run soak -- fuzz; npm run soak -- rows",
  F9: "npm run bench -- files-stall",
  S12: "npm run soak -- log",
  S13: "npm run soak -- flood",
  S15: "npm run soak -- proxy",
  P6: "npm run soak -- log",
  O5: "npm run soak -- stop",
  O8: "npm run soak -- load",
};

/** What a promise says and no test looks at yet, or why none can. */
export const notHeld: Partial<Readonly<Record<PromiseKey, string>>> = {
  S14: "known faults of packages: their list lies with the registry, and tests ask nobody outside; whoever maintains or hosts runs `npm run audit`, as DEVELOPERS.md says",
  O8: "the times themselves: they are true on a quiet machine only, so the whole run asks them before each release and no test of every change does; the tests show that the run can fail",
};
