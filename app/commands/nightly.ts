import { Client } from "pg";
import { settleSignals } from "@/app/repeats/signals/current-run";
import { databaseUrl } from "@/db/connection";
import { checkEvidence } from "./nightly/check-evidence";
import { checkLog } from "./nightly/check-log";
import { runRetention } from "./nightly/run-retention";
import { runCommand } from "./run-command";

/** Any number will do as long as it never changes: of several sites on one database only one runs the checks. */
const nightlyLock = 7_016_020_010;

/** All of the nightly checks, and then the signals, one after the other; one that fails does not keep the next from running. */
async function main(): Promise<number> {
  const lock = new Client({ connectionString: await databaseUrl(), application_name: "ohmsworth nightly" });
  lock.on("error", () => {}); // a lost lock lets another site run the same checks, which does no harm
  await lock.connect();
  try {
    const { rows } = await lock.query<{ mine: boolean }>("select pg_try_advisory_lock($1) as mine", [nightlyLock]);
    if (rows[0]?.mine !== true) return 0;
    const runs = [() => checkLog([]), checkEvidence, () => runRetention({ dry: false }), settleSignals];
    let failed = 0;
    for (const run of runs) await run().catch(() => failed++); // kept with the run
    return failed === 0 ? 0 : 1;
  } finally {
    await lock.end().catch(() => {});
  }
}

await runCommand(main, { endsWithSite: true }); // what was found so far is kept
