import type { Held } from "./held";
import type { PromiseKey } from "./promises";

/** What is promised of running it from day to day, and the tests of it. */
export const heldOfRunning: Partial<Readonly<Record<PromiseKey, readonly Held[]>>> = {
  O1: [
    {
      file: "tests/db/backup/backup.test.ts",
      test: "a restored database is the one that was backed up, to the last row and number",
    },
    {
      file: "tests/db/backup/backup.test.ts",
      test: "a trial restores the backup, removes its database and is kept with what it found",
    },
    {
      file: "tests/app/restore-trial-due.test.ts",
      test: "whatever the hour at which it came back, the next comes before the eighth day",
    },
    {
      file: "tests/app/weekly-trial.test.ts",
      test: "at once where there was none, then every week by night, over both changes of the clocks",
    },
    {
      file: "tests/app/weekly-trial.test.ts",
      test: "one that did not come back is told, made again a day later, and the weeks go on",
    },
    {
      file: "tests/db/backup/restore-trial.test.ts",
      test: "a folder without a finished backup is told; then the newest is restored, and Health knows when",
    },
  ],
  O2: [
    { file: "tests/db/claims/altered-evidence.test.ts", test: "test" },
    {
      file: "tests/db/backup/backup.test.ts",
      test: "a promise that the rows break is named, and the database is empty again",
    },
  ],
  O3: [
    { file: "tests/app/hosting.test.ts", test: "both disks must have room, and one that is not known says nothing" },
    {
      file: "tests/db/readiness.test.ts",
      test: "ready with a database of this schema; behind by one step it is not, and still alive",
    },
    {
      file: "tests/db/readiness.test.ts",
      test: "a database that is held up for longer than two seconds is told, not waited for",
    },
    {
      file: "e2e/says-that-it-failed.spec.ts",
      test: "a page that was left open says within half a minute that the site is ill, and no longer when it is well",
    },
    { file: "tests/app/ill-words.test.ts", test: "test" },
  ],
  O4: [
    {
      file: "tests/db/parts-that-fail.test.ts",
      test: "while the counts cannot be read, rates say so in their time, and jobs and claims are read as ever",
    },
    {
      file: "tests/db/parts-that-fail.test.ts",
      test: "while what was worked out of signals and parts cannot be read, jobs are closed and claims read as ever",
    },
    {
      file: "tests/db/parts-that-fail.test.ts",
      test: "while no photo can be read, jobs are read and closed and claims read as ever, and the photo says that it failed",
    },
  ],
  O5: [
    {
      file: "tests/db/load-stopped.test.ts",
      test: "a load that is stopped, at whichever place, leaves nothing; the same load then goes in whole",
    },
  ],
  O6: [
    { file: "e2e/phone-soak.spec.ts", test: "what the phone was told is on the server, each once" },
    {
      file: "e2e/check-sheet.spec.ts",
      test: "nothing is lost without signal, over a reload, when the server fails, and nothing of the customer is kept",
    },
    { file: "tests/sheets/outbox-order.test.ts", test: "a closing waits behind an answer that was refused" },
  ],
  O7: [
    { file: "tests/app/hosting.test.ts", test: "%j is refused in one line that names it and shows no password" },
    {
      file: "tests/app/hosting-files.test.ts",
      test: "every setting has its line in the list for those who host it, and the list names no other",
    },
    {
      file: "tests/db/connection.test.ts",
      test: "without the setting, or with an empty one, the embedded server is meant",
    },
  ],
  O8: [
    {
      file: "tests/load/report.test.ts",
      test: "five in a hundred answers may be slow, six may not: lists within 300 ms, Repeats within 800",
    },
    { file: "tests/load/report.test.ts", test: "one answer that failed, or none that came, is too many" },
    { file: "tests/load/report.test.ts", test: "memory may fill up at first and grow by a tenth from then on" },
  ],
};
