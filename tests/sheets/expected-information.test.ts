import { describe, expect, test } from "vitest";
import { doubtOf, expectedInformation, weightsAfter } from "@/lib/statistics/choice/expected-information";
import { randomSource } from "../statistics/random-source";

describe("bits that an observation is expected to bring", () => {
  // By hand: two causes, equally likely, told apart for certain by one look: one bit of doubt, all of it gone.
  test("a certain test between two equal causes brings one bit", () => {
    expect(
      expectedInformation({
        weights: [1, 1],
        likelihoods: [
          [1, 0],
          [0, 1],
        ],
      }),
    ).toBeCloseTo(1, 12);
  });

  // By hand: three causes 0.5, 0.3, 0.2; the check is bad under the first only. It is bad in 0.5 and then sure; good in
  // 0.5 and then 0.6 to 0.4. Doubt before: 0.5·1 + 0.3·1.736966 + 0.2·2.321928 = 1.485475. After: 0.5·0.970951 = 0.485475.
  test("a small table worked by hand", () => {
    const table = {
      weights: [0.5, 0.3, 0.2],
      likelihoods: [
        [0, 1],
        [1, 0],
        [1, 0],
      ],
    };
    expect(doubtOf(table.weights)).toBeCloseTo(1.485475, 6);
    expect(expectedInformation(table)).toBeCloseTo(1, 6);
    expect(weightsAfter(table, 0)).toEqual([0, expect.closeTo(0.6, 12), expect.closeTo(0.4, 12)]);
  });

  // By hand: 0.8 to 0.2, and a reading that errs once in ten. Bad in 0.8·0.9 + 0.2·0.1 = 0.74. Doubt 0.721928; after bad
  // 0.72/0.74 = 0.972973 → 0.179256; after good 0.08/0.26 = 0.307692 → 0.890492; expected 0.74·0.179256 + 0.26·0.890492 = 0.364177.
  test("a table with errors worked by hand", () => {
    const table = {
      weights: [0.8, 0.2],
      likelihoods: [
        [0.1, 0.9],
        [0.9, 0.1],
      ],
    };
    expect(expectedInformation(table)).toBeCloseTo(0.721928 - 0.364177, 5);
  });

  // By definition with separate code: doubt before less the mean doubt after, over 300 random tables.
  test("equals doubt before less doubt expected after, on random tables", () => {
    const random = randomSource(20_261_125).uniform;
    for (let round = 0; round < 300; round++) {
      const hypotheses = 2 + Math.floor(random() * 6);
      const outcomes = 2 + Math.floor(random() * 3);
      const weights: number[] = Array.from({ length: hypotheses }, () => (random() < 0.15 ? 0 : random()));
      if (Math.max(...weights) === 0) weights[0] = 1;
      const likelihoods = weights.map(() => row(random, outcomes));
      expect(expectedInformation({ weights, likelihoods })).toBeCloseTo(byEnumeration(weights, likelihoods), 9);
    }
  });

  test("a check that comes out the same under every cause brings nothing", () => {
    expect(
      expectedInformation({
        weights: [0.2, 0.5, 0.3],
        likelihoods: [
          [0.7, 0.3],
          [0.7, 0.3],
          [0.7, 0.3],
        ],
      }),
    ).toBe(0);
  });

  test.each([
    ["weights", { weights: [0, 0], likelihoods: [[1], [1]] }],
    ["weights", { weights: [1, -1], likelihoods: [[1], [1]] }],
    ["likelihoods", { weights: [1, 1], likelihoods: [[1]] }],
    [
      "likelihoods[1]",
      {
        weights: [1, 1],
        likelihoods: [
          [1, 0],
          [0.5, 0.4],
        ],
      },
    ],
  ])("refuses wrong %s by name", (name, experiment) => {
    expect(() => expectedInformation(experiment)).toThrow(name);
  });
});

function row(random: () => number, outcomes: number): number[] {
  const parts = Array.from({ length: outcomes }, () => random() + 1e-3);
  const total = parts.reduce((sum, part) => sum + part, 0);
  return parts.map((part) => part / total);
}

/** Every outcome in turn: its chance times the entropy of what is then believed. */
function byEnumeration(weights: readonly number[], likelihoods: readonly (readonly number[])[]): number {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const entropy = (chances: readonly number[]) =>
    chances.reduce((sum, chance) => (chance > 0 ? sum - chance * (Math.log(chance) / Math.LN2) : sum), 0);
  const prior = weights.map((weight) => weight / total);
  let after = 0;
  for (let o = 0; o < (likelihoods[0]?.length ?? 0); o++) {
    const joint = prior.map((weight, h) => weight * (likelihoods[h]?.[o] ?? 0));
    const chance = joint.reduce((sum, value) => sum + value, 0);
    if (chance > 0) after += chance * entropy(joint.map((value) => value / chance));
  }
  return entropy(prior) - after;
}
