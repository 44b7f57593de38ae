// Weekly mean and the factor A of the run length A·exp(sum), from exact run lengths near a sum of 7: a constant of nature,
// made with lib/statistics/change/cusum-run-length.ts and held to it by tests/signals/luck.test.ts.

export type DesignRatio = 2 | 4;
type Pair = readonly [mean: number, factor: number];

export const luckConstants: Readonly<Record<DesignRatio, readonly [Pair, ...Pair[]]>> = {
  2: [
    [0.0139, 296.2],
    [0.0347, 119.7],
    [0.0693, 60.91],
    [0.1386, 31.5],
    [0.3466, 13.93],
    [Math.LN2, 8.166],
    [1.3863, 5.508],
    [3.4657, 4.084],
    [6.9315, 4.054],
  ],
  4: [
    [0.0092, 106.6],
    [0.0231, 43.55],
    [0.0462, 22.53],
    [0.0924, 12.05],
    [0.231, 5.841],
    [0.4621, 3.897],
    [0.9242, 3.459],
    [2.3105, 4.331],
  ],
};
