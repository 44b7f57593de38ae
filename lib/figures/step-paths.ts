import type { CurvePoint, DrawnCurve } from "./drawn-curve";

/** Outlines on a square of 1000 by 1000 with its origin at the top left, to be stretched over the plot. */
export interface StepPaths {
  readonly line: string;
  /** Range of the line, there and back. */
  readonly band: string;
}

export function stepPaths({ points, maxMonths, maxShare, endMonths }: DrawnCurve): StepPaths {
  const x = (months: number) => rounded((1000 * months) / maxMonths);
  const y = (share: number) => rounded(1000 * (1 - share / maxShare));
  const end = x(endMonths);
  const upwards = (value: (point: CurvePoint) => number) => {
    const corners = points.map((point, i) =>
      i === 0 ? `${x(point.months)} ${y(value(point))}` : `H${x(point.months)}V${y(value(point))}`,
    );
    return `${corners.join("")}H${end}`;
  };
  const back = points
    .map((point, i) => `V${y(point.high)}H${x(i === 0 ? 0 : point.months)}`)
    .reverse()
    .join("");
  return { line: `M${upwards((point) => point.failed)}`, band: `M${upwards((point) => point.low)}${back}Z` };
}

/** A smooth line through many points, on the same square. */
export function smoothPath(
  points: readonly { readonly months: number; readonly failed: number }[],
  { maxMonths, maxShare }: Pick<DrawnCurve, "maxMonths" | "maxShare">,
): string {
  const corners = points.map(
    ({ months, failed }) => `${rounded((1000 * months) / maxMonths)} ${rounded(1000 * (1 - failed / maxShare))}`,
  );
  return corners.length === 0 ? "" : `M${corners.join("L")}`;
}

function rounded(value: number): number {
  return Math.round(value * 10) / 10;
}
