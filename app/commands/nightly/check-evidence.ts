import { readOnly } from "@/db/client";
import { findAlteredEvidence } from "@/db/queries/altered-evidence";
import { findClaimsThatDisagree } from "@/db/queries/claims-that-disagree";
import { noteRun } from "@/db/writes/note-run";

const hours = 60 * 60;

/** Reads every photo, paper, filing and claim again, and keeps what was found for the Health page. @returns all that was found */
export async function checkEvidence(): Promise<readonly string[]> {
  let all: readonly string[] = [];
  await noteRun(
    "check-evidence",
    () => new Date(),
    async () => {
      const altered = await readOnly((db) => findAlteredEvidence(db), { timeoutSeconds: 6 * hours });
      const disagreeing = await readOnly((db) => findClaimsThatDisagree(db), { timeoutSeconds: hours });
      all = [...altered, ...disagreeing];
      return { found: all.length, first: all.slice(0, 20) };
    },
  );
  return all;
}
