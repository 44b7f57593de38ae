import { expect, test } from "vitest";
import { paidBack } from "@/lib/forecast/paid-back";

const week = (partsCents: number, paidCents: number, unclaimedCents = 0) => ({ partsCents, paidCents, unclaimedCents });

// By hand: a share that is the same every week is certain, so that only the spend is not.
test("a steady share pays back that share of what the year may cost", () => {
  const weeks = Array.from({ length: 52 }, () => week(1000, 300, 100));
  const found = paidBack(weeks, [10_000, 20_000, 30_000]);
  expect(found?.asNow).toMatchObject({ low90: 3000, high90: 9000 });
  expect(found?.withUnclaimed).toMatchObject({ low90: 4000, high90: 12_000 });
});

// By hand: one claim of ten thousand in 50 weeks; the weight of one exponential over the sum of 50 is a beta(1, 49):
// the share lies from 0.001 to 0.059, 9 times in 10, around 0.02.
test("a share that rests on one large claim is as unsure as one claim", () => {
  const weeks = Array.from({ length: 50 }, (_, i) => week(10_000, i === 7 ? 10_000 : 0));
  const { low90 = 0, high90 = 0, mean = 0 } = paidBack(weeks, [1_000_000])?.asNow ?? {};
  expect(Math.abs(mean / 20_000 - 1)).toBeLessThan(0.08);
  expect(low90).toBeLessThan(1600);
  expect(Math.abs(high90 / (1e6 * (1 - 0.05 ** (1 / 49))) - 1)).toBeLessThan(0.1);
});

test("nothing is told where nothing was fitted, or no spend is known", () => {
  expect(paidBack([week(0, 0)], [1000])).toBeUndefined();
  expect(paidBack([], [1000])).toBeUndefined();
  expect(paidBack([week(1000, 300)], [])).toBeUndefined();
});
