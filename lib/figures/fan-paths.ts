import type { Fan } from "./fan";

/** Along the upper ends and back along the lower ones, half a month beyond the first and the last. */
export function bandPath({ ahead, max, today }: Fan, band: "band30" | "band60" | "band90"): string {
  const half = ahead.length === 0 ? 0 : (1 - today) / ahead.length / 2;
  const ends = ahead.flatMap(({ at, month }, index) => {
    const x = [...(index === 0 ? [at - half] : []), at, ...(index === ahead.length - 1 ? [at + half] : [])];
    return x.map((place) => ({ place, low: month[band].low, high: month[band].high }));
  });
  const upper = ends.map(({ place, high }) => `${across(place)} ${up(high, max)}`);
  const lower = ends.toReversed().map(({ place, low }) => `${across(place)} ${up(low, max)}`);
  return ends.length === 0 ? "" : `M${[...upper, ...lower].join("L")}Z`;
}

/** Through the means of the months ahead: unlike the likeliest count, they never jump. */
export function meanPath({ ahead, max }: Fan): string {
  return ahead.length === 0 ? "" : `M${ahead.map(({ at, month }) => `${across(at)} ${up(month.mean, max)}`).join("L")}`;
}

/** Through what was seen, month by month. */
export function linePath({ seen, max }: Fan): string {
  return seen.length === 0 ? "" : `M${seen.map(({ at, count }) => `${across(at)} ${up(count, max)}`).join("L")}`;
}

// Outlines are made on a square of 1000 and stretched over the plot.
const across = (at: number) => Math.round(10_000 * at) / 10;
const up = (count: number, max: number) => Math.round(10_000 * (1 - count / max)) / 10;
