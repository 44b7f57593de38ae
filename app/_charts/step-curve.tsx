import { percentOfPlot } from "@/lib/figures/percent-of-plot";
import type { DrawnSteps } from "@/lib/figures/step-curve";
import { stepPaths } from "@/lib/figures/step-paths";
import { formatCount } from "@/lib/format/format-count";
import { formatShare } from "@/lib/format/format-share";
import marks from "./interval.module.css";
import { PointReader } from "./point-reader";
import styles from "./step-curve.module.css";

interface Props {
  readonly label: string;
  readonly figure: DrawnSteps;
}

const plotHeight = 260;

/** Share failed by age, in steps upwards with its range, over the numbers still running, failed and lost sight of. */
export function StepCurve({ label, figure }: Props) {
  const seen = figure.points.filter(({ spoken }) => spoken !== "");
  return (
    <PointReader label={label} points={seen.map(({ spoken }) => ({ text: spoken }))}>
      <div className={styles.curve} aria-hidden="true">
        <span className={styles.shareUnit}>failed, in 100</span>
        <ShareAxis figure={figure} />
        <Plot figure={figure} />
        <MonthAxis figure={figure} />
        <Watched figure={figure} />
      </div>
    </PointReader>
  );
}

function Plot({ figure }: { readonly figure: DrawnSteps }) {
  const { line, band } = stepPaths(figure);
  const seen = figure.points.filter(({ spoken }) => spoken !== "");
  return (
    <svg className={styles.plot} width="100%" height={plotHeight} aria-hidden="true">
      {figure.shareTicks.map((tick) => {
        const y = percentOfPlot(1 - tick / figure.maxShare);
        return <line key={tick} x1="0" x2="100%" y1={y} y2={y} className={tick === 0 ? marks.axis : marks.guide} />;
      })}
      <svg viewBox="0 0 1000 1000" preserveAspectRatio="none" width="100%" height="100%" aria-hidden="true">
        <path d={band} className={styles.band} />
        <path d={line} className={styles.line} />
      </svg>
      {seen.map((point, index) => (
        <circle
          key={point.months}
          data-point={index}
          cx={percentOfPlot(point.months / figure.maxMonths)}
          cy={percentOfPlot(1 - point.failed / figure.maxShare)}
          r="5"
          className={styles.step}
        />
      ))}
    </svg>
  );
}

function ShareAxis({ figure }: { readonly figure: DrawnSteps }) {
  return (
    <svg className={styles.shares} width="44" height={plotHeight} aria-hidden="true">
      {figure.shareTicks.map((tick) => (
        <text
          key={tick}
          x="36"
          y={percentOfPlot(1 - tick / figure.maxShare)}
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

function MonthAxis({ figure }: { readonly figure: DrawnSteps }) {
  return (
    <svg className={styles.months} width="100%" height="44" aria-hidden="true">
      {figure.monthTicks.map((tick) => (
        <text key={tick} x={percentOfPlot(tick / figure.maxMonths)} y="18" textAnchor="middle" className={marks.label}>
          {formatCount(tick)}
        </text>
      ))}
      <text x="100%" y="38" textAnchor="end" className={marks.label}>
        age in months
      </text>
    </svg>
  );
}

function Watched({ figure }: { readonly figure: DrawnSteps }) {
  const lines = [
    { name: "still running", of: (row: DrawnSteps["watched"][number]) => row.stillRunning },
    { name: "failed", of: (row: DrawnSteps["watched"][number]) => row.failed },
    { name: "lost sight of", of: (row: DrawnSteps["watched"][number]) => row.lost },
  ];
  return lines.map(({ name, of }) => (
    <div key={name} className={styles.watched}>
      <span className={styles.watchedName}>{name}</span>
      <svg className={marks.plot} width="100%" height="20" aria-hidden="true">
        {figure.watched.map((row) => (
          <text
            key={row.months}
            x={percentOfPlot(row.months / figure.maxMonths)}
            y="15"
            textAnchor="middle"
            className={marks.label}
          >
            {formatCount(of(row))}
          </text>
        ))}
      </svg>
    </div>
  ));
}
