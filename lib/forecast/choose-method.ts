import type { BackTest, TestedMethod } from "./back-test";
import type { DemandMethodKey } from "./demand-method";

export interface MethodChoice {
  readonly key: DemandMethodKey;
  readonly reason: string;
}

/** A challenger must be this much better on the part's own past; less is the luck of a few months. */
const clearlyBetter = 0.9;
/**
 * And more so against the lives of the machines, which know more than the part's months; and there only methods that
 * say how a level may change. A quiet year makes all others look good, and the next one shows what that was worth: on
 * an invented company, parts that left lives for less lost by it. Own choice, no source.
 */
const betterThanLives = 0.7;
const rivalsOfLives: readonly DemandMethodKey[] = ["shared-levels", "own-level", "own-level-with-season"];
/**
 * And the gain must exceed its own standard error this many times. Starting points a month apart judge mostly the
 * same months: six of them tell about as much as one, so that twice is asked for with an error √6 times as large.
 */
const standardErrors = 5;
/** Under this many starting points no difference is told from luck. */
const fewestOrigins = 10;
/** Where next to nothing was used, a method that expects nothing always looks best. */
const fewestMonthsUsed = 8;

/**
 * The usual method, unless another was clearly and steadily better on this part's own past months. The best of many on
 * a few months is mostly the luckiest: choosing it freely costs more than it gains.
 * @param usual the method that is best over all parts
 */
export function chooseMethod(test: BackTest, usual: DemandMethodKey): MethodChoice {
  if (test.kind === "too-short") {
    return { key: usual, reason: `${test.months} months are known; from ${test.needed} on methods can be compared.` };
  }
  const home = test.methods.find(({ key }) => key === usual);
  if (home === undefined) throw new RangeError(`usual must be among the tested methods; it is ${usual}`);
  const better = test.methods
    .filter((method) => method !== home && test.monthsUsed >= fewestMonthsUsed && isClearlyBetter(method, home))
    .toSorted((a, b) => a.loss - b.loss)[0];
  const over = `over ${test.months} months forecast from ${test.origins} starting points`;
  if (better !== undefined) {
    return {
      key: better.key,
      reason: `${capital(better.name)}: its loss was less by ${percentLess(better, home)} in 100 than that of ${home.name} ${over}.`,
    };
  }
  return {
    key: usual,
    reason: `${capital(home.name)}: no other method was clearly better ${over} (loss ${Math.round(home.loss * 100) / 100}).`,
  };
}

function isClearlyBetter(method: TestedMethod, home: TestedMethod): boolean {
  const lives = home.key === "fleet-lives";
  if (lives && !rivalsOfLives.includes(method.key)) return false;
  const enough = lives ? betterThanLives : clearlyBetter;
  if (home.lossByOrigin.length < fewestOrigins || method.loss >= enough * home.loss) return false;
  const gains = home.lossByOrigin.map((loss, i) => loss - (method.lossByOrigin[i] ?? loss));
  const mean = gains.reduce((sum, gain) => sum + gain, 0) / gains.length;
  const squares = gains.reduce((sum, gain) => sum + (gain - mean) ** 2, 0);
  return mean > standardErrors * Math.sqrt(squares / (gains.length - 1) / gains.length);
}

function percentLess(method: TestedMethod, home: TestedMethod): number {
  return Math.round(100 * (1 - method.loss / home.loss));
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
