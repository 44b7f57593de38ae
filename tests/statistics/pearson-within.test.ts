import { expect, test } from "vitest";
import { pearsonWithin } from "@/lib/statistics/multiplicity/pearson-within";

/** Every way in which events can fall into periods, each with its chance: shares no code with the formula. */
function outcomes(events: number, shares: readonly number[]): { counts: number[]; chance: number }[] {
  let all = [{ counts: shares.map(() => 0), chance: 1 }];
  for (let event = 0; event < events; event++)
    all = all.flatMap(({ counts, chance }) =>
      shares.map((share, i) => ({ counts: counts.with(i, (counts[i] ?? 0) + 1), chance: chance * share })),
    );
  return all;
}

// By definition: mean and variance of Pearson's statistic over every outcome of the multinomial distribution.
test.each([
  [2, [1, 1, 1]],
  [3, [1, 2, 3]],
  [5, [0.2, 0.3, 0.1, 0.4]],
  [4, [10, 1]],
])("%i events over the weights %j have the mean and variance that every outcome adds up to", (events, weights) => {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const shares = weights.map((weight) => weight / total);
  let [mean, square] = [0, 0];
  const told = new Set<string>();
  for (const { counts, chance } of outcomes(events, shares)) {
    const statistic = counts.reduce((sum, count, i) => {
      const due = events * (shares[i] ?? 0);
      return sum + (count - due) ** 2 / due;
    }, 0);
    const found = pearsonWithin({ counts, weights });
    expect(found?.statistic).toBeCloseTo(statistic, 10);
    told.add(`${found?.mean.toFixed(9)} ${found?.variance.toFixed(9)}`);
    mean += chance * statistic;
    square += chance * statistic ** 2;
  }
  expect([...told]).toEqual([`${mean.toFixed(9)} ${(square - mean ** 2).toFixed(9)}`]);
});

test("one event or one period tells nothing, and what falls where nothing can is left out", () => {
  expect(pearsonWithin({ counts: [1, 0], weights: [1, 1] })).toBeUndefined();
  expect(pearsonWithin({ counts: [5], weights: [1] })).toBeUndefined();
  expect(pearsonWithin({ counts: [2, 1, 9], weights: [1, 1, 0] })).toEqual(
    pearsonWithin({ counts: [2, 1], weights: [1, 1] }),
  );
});

test("counts that are no counts are named", () => {
  expect(() => pearsonWithin({ counts: [1.5, 1], weights: [1, 1] })).toThrow("counts");
  expect(() => pearsonWithin({ counts: [1, 1], weights: [1, -1] })).toThrow("weights");
  expect(() => pearsonWithin({ counts: [1, 1], weights: [1] })).toThrow("weights");
});
