import { settleSignals } from "@/app/repeats/signals/current-run";
import { runCommand } from "./run-command";

const sentences = {
  "worked out": "Signals are worked out as of the last whole week.",
  "brought up to date": "Signals are brought up to date as of the last whole week.",
  standing: "Signals rest on the data as they stand: nothing to work out.",
  "no data": "There are too few jobs to follow yet.",
} as const;

/** Works out what fails more than it should, where data have changed since. The site does it every night. */
async function main(): Promise<number> {
  console.log(sentences[await settleSignals()]);
  return 0;
}

await runCommand(main);
