import { expect, test } from "vitest";
import { timeAtPhone } from "@/e2e/keystroke-model";

const nothing = { taps: 0, fields: 0, keys: 0, photos: 0, words: 0 };

// By hand from the paper's operators: a tap is M 1.35 + P 1.10 + K 0.28 = 2.73; a field P + K = 1.38; a character of a code 0.75; a
// photo H 0.40 + 2 + a tap = 5.13.
test("each operator by itself", () => {
  const seconds = (part: Partial<typeof nothing>) => timeAtPhone({ ...nothing, ...part }).seconds;
  expect(seconds({ taps: 1 })).toBeCloseTo(2.73, 9);
  expect(seconds({ fields: 1 })).toBeCloseTo(1.38, 9);
  expect(seconds({ keys: 1 })).toBeCloseTo(0.75, 9);
  expect(seconds({ photos: 1 })).toBeCloseTo(5.13, 9);
  expect(timeAtPhone({ ...nothing, words: 238 })).toEqual({ seconds: 0, secondsReadingAll: 60 });
});

// The budget's flow, every tap of it: the job, six times Next, twice Take and Use, the finding, review, close. Each reading typed
// with four characters: 14 × 2.73 + 6 × 1.38 + 24 × 0.75 + 2 × 5.13 = 74.76.
test("six typed readings and two photos in fourteen taps are 75 seconds", () => {
  expect(timeAtPhone({ ...nothing, taps: 14, fields: 6, keys: 24, photos: 2 }).seconds).toBeCloseTo(74.76, 9);
});

// The dearest six: live voltages, each with its cautions to confirm, two questions to answer and an outside-range reading to keep.
test("six live readings that are out of range stay under three minutes", () => {
  const taps = 14 + 6 * 4;
  expect(timeAtPhone({ ...nothing, taps, fields: 6, keys: 24, photos: 2 }).seconds).toBeLessThan(180);
});
