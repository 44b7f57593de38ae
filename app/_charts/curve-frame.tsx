import type { ReactNode } from "react";
import { type CountsUnder, type CurveAxes, readableCounts } from "@/lib/figures/drawn-curve";
import { percentOfPlot } from "@/lib/figures/percent-of-plot";
import { formatCount } from "@/lib/format/format-count";
import { formatShare } from "@/lib/format/format-share";
import styles from "./curve-frame.module.css";
import marks from "./interval.module.css";

interface Props {
  readonly axes: CurveAxes;
  /** Lines of counts under the axis, with a heading for each set of lines. */
  readonly under: readonly { readonly heading?: string; readonly lines: readonly CountsUnder[] }[];
  /** What is drawn inside, on the svg of the plot. */
  readonly children: ReactNode;
}

const plotHeight = 260;

/** Two axes from 0 with their grid, a drawing between them, and counts under the ages at which they were made. */
export function CurveFrame({ axes, under, children }: Props) {
  return (
    <div className={styles.curve} aria-hidden="true">
      <span className={styles.shareUnit}>{axes.unit}</span>
      <ShareAxis axes={axes} />
      <svg className={styles.plot} width="100%" height={plotHeight} aria-hidden="true">
        {axes.shareTicks.map((tick) => {
          const y = percentOfPlot(1 - tick / axes.maxShare);
          return <line key={tick} x1="0" x2="100%" y1={y} y2={y} className={tick === 0 ? marks.axis : marks.guide} />;
        })}
        {children}
      </svg>
      <MonthAxis axes={axes} />
      {under.map(({ heading, lines }) => (
        <div key={heading ?? ""} className={styles.under}>
          {heading !== undefined && <span className={styles.heading}>{heading}</span>}
          {lines.map((line) => (
            <Counts key={line.name} line={line} axes={axes} />
          ))}
        </div>
      ))}
    </div>
  );
}

function ShareAxis({ axes }: { readonly axes: CurveAxes }) {
  return (
    <svg className={styles.shares} width="44" height={plotHeight} aria-hidden="true">
      {axes.shareTicks.map((tick) => (
        <text
          key={tick}
          x="36"
          y={percentOfPlot(1 - tick / axes.maxShare)}
          dy="0.35em"
          textAnchor="end"
          className={marks.label}
        >
          {formatShare(tick, 0)}
        </text>
      ))}
    </svg>
  );
}

function MonthAxis({ axes }: { readonly axes: CurveAxes }) {
  return (
    <svg className={styles.months} width="100%" height="44" aria-hidden="true">
      {axes.monthTicks.map((tick) => (
        <text key={tick} x={percentOfPlot(tick / axes.maxMonths)} y="18" textAnchor="middle" className={marks.label}>
          {formatCount(tick)}
        </text>
      ))}
      <text x="100%" y="38" textAnchor="end" className={marks.label}>
        age in months
      </text>
    </svg>
  );
}

function Counts({ line, axes }: { readonly line: CountsUnder; readonly axes: CurveAxes }) {
  return (
    <div className={styles.counts}>
      <span className={styles.countsName}>{line.name}</span>
      <svg className={marks.plot} width="100%" height="20" aria-hidden="true">
        {readableCounts(line, axes).map(({ months, count }) => (
          <text
            key={months}
            x={percentOfPlot(months / axes.maxMonths)}
            y="15"
            textAnchor="middle"
            className={marks.label}
          >
            {formatCount(count)}
          </text>
        ))}
      </svg>
    </div>
  );
}
