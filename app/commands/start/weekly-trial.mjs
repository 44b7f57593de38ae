import { setTimeout as sleep } from "node:timers/promises";
import { runNode } from "./run-step.mjs";
import { say } from "./say.mjs";

const minuteMs = 60_000;
const command = ["--import", "tsx", "app/commands/restore-trial.ts"];

/**
 * How long it is before it is asked again whether a trial is due. After a trial that is hours, whatever its record says: a
 * clock that was wrong can make one due for ever, and one that never began, as in a folder without a backup, leaves no record.
 */
const waits = { nothingDue: 10 * minuteMs, failed: 60 * minuteMs, cameBack: 20 * 60 * minuteMs };

/**
 * From now on the newest backup of the folder is restored on trial whenever that is due. The starter does it and not the
 * site, whose login may make no database. What comes out is kept in the database and shown on Health.
 * @param means the clock, the waiting, and what makes a trial: those of the machine, unless a test brings its own
 */
export async function tryBackupsWeekly(
  { folder, database, signal },
  { now = () => new Date(), wait = sleepUnlessStopped, makeTrial = tryNewest } = {},
) {
  if (!folder) return;
  let outcome = "nothingDue";
  while (await wait(waits[outcome], signal)) {
    try {
      outcome = "nothingDue";
      if (!(await database.isTrialDue(now()))) continue;
      outcome = "failed";
      await makeTrial({ folder, url: database.url, signal });
      outcome = "cameBack";
    } catch (error) {
      if (error?.name !== "AbortError") say(`the newest backup was not restored on trial: ${error.message}`);
    }
  }
}

/** @returns false where it was broken off */
async function sleepUnlessStopped(ms, signal) {
  try {
    await sleep(ms, undefined, { ref: false, signal });
    return true;
  } catch {
    return false;
  }
}

const tryNewest = ({ folder, url, signal }) =>
  runNode("Restoring the newest backup on trial", [...command, "--in", folder], {
    signal,
    environment: { DATABASE_URL: url },
  });
