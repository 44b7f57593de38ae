import { expect, test } from "vitest";
import { mostTries, oneMoreWrong, type WrongTries, waitBeforeTry, windowMs } from "@/lib/people/sign-in-delay";

const start = Date.UTC(2026, 9, 31, 9);

/** Tries at once whenever it is allowed to, until the hour is over. @returns the moments of the tries */
function eager(until: number): readonly number[] {
  const moments: number[] = [];
  let tries: WrongTries | undefined;
  for (let now = start; now < until; ) {
    const wait = waitBeforeTry(tries, now);
    if (wait > 0) {
      now += wait;
      continue;
    }
    moments.push(now);
    tries = oneMoreWrong(tries, now);
  }
  return moments;
}

test("whoever tries whenever they may gets ten tries in any quarter of an hour of a day", () => {
  const moments = eager(start + 24 * 60 * 60_000);
  expect(moments.length).toBeGreaterThan(500);
  const inWindow = moments.map((from) => moments.filter((at) => at >= from && at < from + windowMs).length);
  expect(Math.max(...inWindow)).toBe(mostTries);
});

test("three are free, then each wait is twice the one before", () => {
  const gaps = eager(start + windowMs).map((at, i, all) => at - (all[i - 1] ?? at));
  expect(gaps).toEqual([0, 0, 0, 1000, 2000, 4000, 8000, 16_000, 32_000, 64_000]);
});

test("a clock that is put back a year or on a day makes nobody wait longer than a quarter of an hour", () => {
  const tries = { count: 500, lastAt: start + 60_000 };
  for (const now of [start - 365 * 86_400_000, start - 1, start, start + 1, start + 86_400_000])
    expect(waitBeforeTry(tries, now)).toBeLessThanOrEqual(windowMs);
  expect(waitBeforeTry(tries, start + 86_400_000)).toBe(0);
  expect(oneMoreWrong(tries, start + 86_400_000)).toEqual({ count: 1, lastAt: start + 86_400_000 });
});
