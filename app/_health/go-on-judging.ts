import { judgeWhatWaits } from "@/db/writes/money/left-to-judge";
import { logLine } from "./log-line";

/** Longer than judging a million jobs takes: what waits over two looks waits for nobody. */
const everyMs = 2 * 60_000;

/** From now on units whose judging broke off with the process that was at it are judged by this one. */
export function goOnJudging(): void {
  let seen: string | undefined;
  let looking = false;
  setInterval(async () => {
    if (looking) return;
    looking = true;
    try {
      seen = await judgeWhatWaits(seen);
    } catch {
      logLine({ level: "error", what: "judging what waits" }); // the next look tries again
    } finally {
      looking = false;
    }
  }, everyMs).unref();
}
