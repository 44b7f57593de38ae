import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { findAlteredEvidence } from "@/db/queries/altered-evidence";
import { findClaimsThatDisagree } from "@/db/queries/claims-that-disagree";

const hours = 60 * 60;

/** Reads every photo, paper, filing and claim again, and names what is not as it was kept. Meant for every night. */
async function main(): Promise<number> {
  const altered = await readOnly((db) => findAlteredEvidence(db), { timeoutSeconds: 6 * hours });
  const disagreeing = await readOnly((db) => findClaimsThatDisagree(db), { timeoutSeconds: hours });
  for (const line of [...altered, ...disagreeing]) console.log(line);
  if (altered.length + disagreeing.length === 0) console.log("All evidence is as it was kept.");
  return altered.length + disagreeing.length === 0 ? 0 : 1;
}

main()
  .catch((error: unknown) => {
    console.error(error instanceof Error ? error.message : error);
    return 1;
  })
  .then(async (code) => {
    await closeDatabase();
    process.exitCode = code;
  });
