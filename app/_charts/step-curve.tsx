import type { CurvePoint, DrawnCurve } from "@/lib/figures/drawn-curve";
import type { ModelLine } from "@/lib/figures/model-line";
import { percentOfPlot } from "@/lib/figures/percent-of-plot";
import { smoothPath, stepPaths } from "@/lib/figures/step-paths";
import { CurveFrame } from "./curve-frame";
import { CurveLegend } from "./curve-legend";
import lines from "./curve-lines.module.css";
import { PointReader } from "./point-reader";

interface Props {
  readonly label: string;
  readonly figure: DrawnCurve;
  /** A fitted life over the steps: a smooth dotted line, so that nobody takes it for what was seen. */
  readonly model?: ModelLine | undefined;
  readonly names?: { readonly steps: string; readonly model: string };
}

/** A line by age, in steps upwards with its range, over the counts that it rests on. */
export function StepCurve({ label, figure, model, names }: Props) {
  const read = [...figure.points.filter(({ spoken }) => spoken !== ""), ...(model?.limits ?? [])];
  return (
    <>
      {model !== undefined && names !== undefined && (
        <CurveLegend
          entries={[
            { stroke: "steps", name: names.steps },
            { stroke: "model", name: names.model },
          ]}
        />
      )}
      <PointReader label={label} points={read.map(({ spoken }) => ({ text: spoken }))}>
        <CurveFrame axes={figure} under={[{ lines: figure.under }]}>
          <Stretched>
            <path d={stepPaths(figure).band} className={lines.band} />
            <path d={stepPaths(figure).line} className={lines.steps} />
            {model !== undefined && <path d={smoothPath(model.points, figure)} className={lines.model} />}
          </Stretched>
          {model?.limits.map((limit) => (
            <ModelLimit key={limit.months} limit={limit} figure={figure} />
          ))}
          <CurvePoints points={read} figure={figure} from={0} />
        </CurveFrame>
      </PointReader>
    </>
  );
}

/** Outlines are made on a square of 1000 and stretched over the plot; strokes keep their width. */
export function Stretched({ children }: { readonly children: React.ReactNode }) {
  return (
    <svg viewBox="0 0 1000 1000" preserveAspectRatio="none" width="100%" height="100%" aria-hidden="true">
      {children}
    </svg>
  );
}

interface PointsProps {
  readonly points: readonly Omit<CurvePoint, "atRisk">[];
  readonly figure: Pick<DrawnCurve, "maxMonths" | "maxShare">;
  /** Number of the first of them among all points that can be read. */
  readonly from: number;
}

/** Unseen circles that a tap or an arrow key makes visible. */
export function CurvePoints({ points, figure, from }: PointsProps) {
  return points.map((point, index) => (
    <circle
      key={`${from} ${point.months} ${point.spoken}`}
      data-point={from + index}
      cx={percentOfPlot(point.months / figure.maxMonths)}
      cy={percentOfPlot(1 - point.failed / figure.maxShare)}
      r="5"
      className={lines.step}
    />
  ));
}

function ModelLimit({ limit, figure }: { readonly limit: ModelLine["limits"][number]; readonly figure: DrawnCurve }) {
  const x = percentOfPlot(limit.months / figure.maxMonths);
  const [top, bottom] = [limit.high, limit.low].map((share) => percentOfPlot(1 - share / figure.maxShare));
  return (
    <>
      <line x1={x} x2={x} y1={top} y2={bottom} className={lines.modelLimit} />
      {[top, bottom].map((y) => (
        <svg key={y} x={x} y={y} width="1" height="1" overflow="visible" aria-hidden="true">
          <line x1="-5" x2="5" y1="0" y2="0" className={lines.modelLimit} />
        </svg>
      ))}
    </>
  );
}
