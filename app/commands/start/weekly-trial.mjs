import { runNode } from "./run-step.mjs";
import { say } from "./say.mjs";

const everyMs = 10 * 60_000;
const command = ["--import", "tsx", "app/commands/restore-trial.ts"];

/**
 * From now on the newest backup of the folder is restored on trial whenever that is due. The starter does it and not the
 * site, whose login may make no database. What comes out is kept in the database and shown on Health.
 */
export function tryBackupsWeekly({ folder, database, signal }) {
  if (!folder) return;
  let running = false;
  const look = async () => {
    if (running || signal.aborted) return;
    running = true;
    try {
      if (await database.isTrialDue()) await tryNewest({ folder, url: database.url, signal });
    } catch (error) {
      if (error?.name !== "AbortError") say(`the newest backup was not restored on trial: ${error.message}`);
    } finally {
      running = false;
    }
  };
  const timer = setInterval(look, everyMs);
  timer.unref();
  signal.addEventListener("abort", () => clearInterval(timer), { once: true });
}

const tryNewest = ({ folder, url, signal }) =>
  runNode("Restoring the newest backup on trial", [...command, "--in", folder], {
    signal,
    environment: { DATABASE_URL: url },
  });
