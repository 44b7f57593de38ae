// Judges a share of the units on a thread of its own, and says how many rows came of it.
import { parentPort, workerData } from "node:worker_threads";
import { closeDatabase } from "../../close-database";
import { type JudgingShare, judgeShare } from "./judge-share";

const share: JudgingShare = workerData; // judge-all.ts starts this and nobody else
const rows = await judgeShare(share);
await closeDatabase();
parentPort?.postMessage(rows);
