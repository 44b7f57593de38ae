/** Wrong tries in a row that count together, and when the last of them was, in milliseconds. */
export interface WrongTries {
  readonly count: number;
  readonly lastAt: number;
}

/** Tries of one account from one place or device within any such window. Own choice, no source. */
export const mostTries = 10;
export const windowMs = 15 * 60_000;
/** NIST SP 800-63B: no more than 100 consecutive failed attempts on one account. */
export const mostInARow = 100;

/**
 * How long, in milliseconds, the next try of the same account from the same place must wait; 0 where it need not.
 * Three tries are free, then each wait is twice the one before; after ten it is a quarter of an hour. A clock that was
 * put back makes nobody wait longer than that.
 */
export function waitBeforeTry(tries: WrongTries | undefined, now: number): number {
  if (tries === undefined || isOver(tries, now) || tries.count < freeTries) return 0;
  const wait = tries.count >= mostTries ? windowMs : 1000 * 2 ** (tries.count - freeTries);
  return Math.min(windowMs, Math.max(0, tries.lastAt + wait - now));
}

/** The tally after one more wrong try: a quarter of an hour without any begins it anew. */
export function oneMoreWrong(tries: WrongTries | undefined, now: number): WrongTries {
  return { count: tries === undefined || isOver(tries, now) ? 1 : tries.count + 1, lastAt: now };
}

const freeTries = 3;

function isOver({ lastAt }: WrongTries, now: number): boolean {
  return Math.abs(now - lastAt) >= windowMs;
}
