import { checkEvidence } from "./nightly/check-evidence";
import { runCommand } from "./run-command";

/** Reads every photo, paper, filing and claim again, and names what is not as it was kept. The site does it every night by itself. */
async function main(): Promise<number> {
  const found = await checkEvidence();
  for (const line of found) console.log(line);
  if (found.length === 0) console.log("All evidence is as it was kept.");
  return found.length === 0 ? 0 : 1;
}

await runCommand(main);
