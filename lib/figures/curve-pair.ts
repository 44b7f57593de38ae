import { type CurveAxes, type DrawnCurve, sharedAxes } from "./drawn-curve";

/** Two lines on one drawing: told apart by their strokes and by a number at their ends, not by colour alone. */
export interface CurvePair {
  readonly axes: CurveAxes;
  readonly lines: readonly [PairedCurve, PairedCurve];
}

export interface PairedCurve {
  readonly name: string;
  readonly curve: DrawnCurve;
}

export function curvePair(first: PairedCurve, second: PairedCurve): CurvePair {
  const axes = sharedAxes(first.curve, second.curve);
  const onAxes = ({ name, curve }: PairedCurve): PairedCurve => ({ name, curve: { ...curve, ...axes } });
  return { axes, lines: [onAxes(first), onAxes(second)] };
}
