import type { CurvePair as Pair } from "@/lib/figures/curve-pair";
import type { DrawnCurve } from "@/lib/figures/drawn-curve";
import { percentOfPlot } from "@/lib/figures/percent-of-plot";
import { stepPaths } from "@/lib/figures/step-paths";
import { CurveFrame } from "./curve-frame";
import { CurveLegend } from "./curve-legend";
import lines from "./curve-lines.module.css";
import { PointReader } from "./point-reader";
import { CurvePoints, Stretched } from "./step-curve";

interface Props {
  readonly label: string;
  readonly pair: Pair;
}

/** Two lines by age on one drawing: solid and dashed, each with its number at its end. */
export function CurvePair({ label, pair }: Props) {
  const [first, second] = pair.lines;
  const read = pair.lines.map(({ name, curve }) =>
    curve.points
      .filter(({ spoken }) => spoken !== "")
      .map((point) => ({ ...point, spoken: `${name}: ${point.spoken}` })),
  );
  return (
    <>
      <CurveLegend
        entries={[
          { stroke: "steps", name: first.name, mark: "1" },
          { stroke: "second", name: second.name, mark: "2" },
        ]}
      />
      <PointReader label={label} points={read.flat().map(({ spoken }) => ({ text: spoken }))}>
        <CurveFrame
          axes={pair.axes}
          under={pair.lines.map(({ name, curve }, i) => ({ heading: `${i + 1} ${name}`, lines: curve.under }))}
        >
          <Stretched>
            <path d={stepPaths(first.curve).band} className={lines.band} />
            <path d={stepPaths(second.curve).band} className={lines.secondBand} />
            <path d={stepPaths(first.curve).line} className={lines.steps} />
            <path d={stepPaths(second.curve).line} className={lines.second} />
          </Stretched>
          <EndMark curve={first.curve} mark="1" />
          <EndMark curve={second.curve} mark="2" />
          <CurvePoints points={read[0] ?? []} figure={pair.axes} from={0} />
          <CurvePoints points={read[1] ?? []} figure={pair.axes} from={read[0]?.length ?? 0} />
        </CurveFrame>
      </PointReader>
    </>
  );
}

function EndMark({ curve, mark }: { readonly curve: DrawnCurve; readonly mark: string }) {
  const x = percentOfPlot(curve.endMonths / curve.maxMonths);
  const y = percentOfPlot(1 - (curve.points.at(-1)?.failed ?? 0) / curve.maxShare);
  return (
    <text x={x} y={y} dx="6" dy="0.35em" className={lines.endMark}>
      {mark}
    </text>
  );
}
