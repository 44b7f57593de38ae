// Weekly mean and the factor A of the run length A·exp(sum), from exact run lengths near a sum of 7: a constant of nature,
// made with lib/statistics/change/cusum-run-length.ts and held to it by tests/signals/luck.test.ts.

export type DesignRatio = 2 | 3;
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
  3: [
    [0.011, 146],
    [0.0275, 59.37],
    [0.0549, 30.51],
    [0.1099, 16.1],
    [0.2747, 7.519],
    [0.5493, 4.761],
    [1.0986, 3.792],
    [2.7465, 3.833],
  ],
};
