import { expect, test } from "vitest";
import type { CellWeeks } from "@/lib/signals/cell-weeks";
import { followCell, logRatio } from "@/lib/signals/follow-cell";
import { cusumReference, poissonCusum } from "@/lib/statistics/change/poisson-cusum";

const firstWeek = 13 * 10;

function cell(
  observed: readonly number[],
  expected: readonly number[],
  late: readonly (readonly [number, number, number])[] = [],
): CellWeeks {
  return {
    key: { kind: "component", word: "pump", productType: "dishwasher", maker: "A", model: "M", madeHalf: undefined },
    firstWeek,
    expected: Float64Array.from(expected),
    expectedAhead: 0,
    observed: Float64Array.from(observed),
    tolerated: new Float64Array(10).fill(1),
    clumped: Array(10).fill(1),
    ages: () => [],
    unknownAt: (week, seenAt) =>
      late.reduce((sum, [of, known, jobs]) => sum + (of === week && known > seenAt ? jobs : 0), 0),
    carrying: () => new Map(),
  };
}

// Against separate code: the plain Poisson sum of lib/statistics with the reference of each week. One count of it is ln 2.
test("without tolerance or delay it is the Poisson sum of lib/statistics", () => {
  const counts = [0, 1, 0, 3, 2, 0, 0, 1, 4, 2, 0, 0, 0, 5];
  const expected = counts.map((_, week) => 0.5 + 0.05 * week);
  const references = expected.map((mean) => cusumReference({ expected: mean, ratio: 2 }));
  const plain = poissonCusum({ counts, references, threshold: 100, start: 0 });
  const followed = followCell(cell(counts, expected), {
    at: counts.map((_, week) => firstWeek + week),
    knownWithin: [1],
    ratio: 2,
  });
  followed.forEach((standing, week) => {
    expect(standing?.score).toBeCloseTo((plain[week]?.sum ?? Number.NaN) * Math.log(2), 9);
    const point = plain[week];
    const onset = point?.kind === "running" ? point.onset : week + 1;
    expect((standing?.onsetWeek ?? 0) - firstWeek).toBe(onset);
  });
});

// By hand: 3 counted where 1 was expected adds 3 ln 2 - 1 = 1.079; the two empty weeks before leave the sum at 0.
test("the onset is the week after the sum was last 0, and counts run from it", () => {
  const [standing] = followCell(cell([0, 0, 3, 2], [1, 1, 1, 1]), { at: [firstWeek + 3], knownWithin: [1], ratio: 2 });
  expect(standing?.onsetWeek).toBe(firstWeek + 2);
  expect(standing).toMatchObject({ observed: 5, expected: 2 });
  expect(standing?.score).toBeCloseTo(5 * Math.log(2) - 2, 9);
});

// By hand: in the newest week only 4 of 10 jobs can be on record, so 0.4 of the 5 expected are held against it.
test("weeks that are not complete yet are held against what can be on record", () => {
  const [standing] = followCell(cell([5, 2], [5, 5]), { at: [firstWeek + 1], knownWithin: [0.4, 1], ratio: 2 });
  expect(standing?.score).toBeCloseTo(0, 9);
  const followed = followCell(cell([9, 6], [5, 5]), { at: [firstWeek + 1], knownWithin: [0.4, 1], ratio: 2 });
  expect(followed[0]?.expected).toBeCloseTo(7, 9);
});

test("jobs that were closed later are not known earlier", () => {
  const late = [[firstWeek, firstWeek + 2, 3]] as const;
  const at = [firstWeek, firstWeek + 1, firstWeek + 2];
  const followed = followCell(cell([4, 0, 0], [1, 0.1, 0.1], late), { at, knownWithin: [1, 1, 1], ratio: 2 });
  expect(followed.map((standing) => standing?.observed)).toEqual([0, 0, 4]);
});

test("nothing is followed before there is an expectation", () => {
  expect(followCell(cell([5], [0]), { at: [firstWeek], knownWithin: [1], ratio: 2 })).toEqual([undefined]);
});

// By definition: the expected likelihood ratio is 1 while nothing is wrong, for clumped counts as well; term by term.
test("the likelihood ratio of clumped counts has mean 1 under the null", () => {
  const [mean, clumped] = [1.7, 1.5];
  const size = mean / (clumped - 1);
  let [chance, total] = [(size / (size + mean)) ** size, 0];
  for (let count = 0; count < 400; count++) {
    total += chance * Math.exp(logRatio(count, mean, 2, clumped));
    chance *= ((size + count) / (count + 1)) * (mean / (size + mean));
  }
  expect(total).toBeCloseTo(1, 9);
});
