import { todayIn } from "@/app/_clock/today";
import { readOnly } from "@/db/client";
import type { Reader } from "@/db/database-types";
import { loadCountedState } from "@/db/queries/counted-state";
import { loadShop } from "@/db/queries/shop";
import type { Day } from "@/lib/calendar/day";

/** Questions of one kind whose answers are kept. Own choice: what a company's people look at within some minutes. */
const mostKept = 24;
/** The state of the data tells when an answer is out of date; this bounds what a repair by hand past it could leave, whatever becomes of the clock. */
const longestMs = 10 * 60_000;

/**
 * Answers that are worked out once for all who ask the same of the same data: rates cost a second of processor time at
 * 100,000 jobs, and twenty people ask for the same few. `question` must say everything that the answer depends on besides
 * the data and the day. Who asks while an answer is being worked out waits for that one. `work` reads, and hands back what is
 * to be reckoned once the transaction is over, so that no reckoning keeps one open.
 */
export function keptAnswers<Answer>() {
  const kept = new Map<string, { readonly until: number; readonly answer: Promise<Answer> }>();
  return async (question: unknown, work: (db: Reader, today: Day) => Promise<() => Answer>): Promise<Answer> => {
    const { state, today } = await readOnly(async (db) => ({
      state: await loadCountedState(db),
      today: todayIn((await loadShop(db)).timeZone),
    }));
    const key = JSON.stringify([state, today, question]);
    const known = kept.get(key);
    const isGood = known !== undefined && known.until > performance.now();
    const one = isGood
      ? known
      : { until: performance.now() + longestMs, answer: readOnly((db) => work(db, today)).then((reckon) => reckon()) };
    if (!isGood) one.answer.catch(() => kept.delete(key));
    kept.delete(key); // the last asked for is the last to go
    kept.set(key, one);
    const [oldest] = kept.keys();
    if (kept.size > mostKept && oldest !== undefined) kept.delete(oldest);
    return await one.answer;
  };
}
