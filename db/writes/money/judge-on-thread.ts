import { parentPort, workerData } from "node:worker_threads";
import { closeDatabase } from "../../close-database";
import { type JudgingShare, judgeShare } from "./judge-share";

/** Judges the share that the thread was started with, and says how many rows came of it. */
export async function judgeOnThread(): Promise<void> {
  const share: JudgingShare = workerData; // judge-all.ts starts the thread and nobody else
  const rows = await judgeShare(share);
  await closeDatabase();
  parentPort?.postMessage(rows);
}
