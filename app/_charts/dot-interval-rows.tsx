import Link from "next/link";
import { percentOfPlot } from "@/lib/figures/percent-of-plot";
import { positionOn, type RateAxis } from "@/lib/figures/rate-axis";
import type { RateRow, RateRows } from "@/lib/figures/rate-rows";
import { describeEstimate } from "@/lib/format/format-estimate";
import styles from "./dot-interval-rows.module.css";
import marks from "./interval.module.css";
import { IntervalShape } from "./interval-shape";
import { PointReader } from "./point-reader";

interface Props {
  /** What is compared, for those who hear the drawing. */
  readonly label: string;
  readonly figure: RateRows;
  /** A value that parts more from less, such as 1 on an axis of ratios: a line through all rows. */
  readonly even?: number | undefined;
}

/** One row a group on one axis from 0, the fleet last as a diamond; groups too small to judge wait in a closed list. */
export function DotIntervalRows({ label, figure, even }: Props) {
  const { axis, rows, tooFew, fleet } = figure;
  const all = fleet === undefined ? rows : [...rows, fleet];
  return (
    <div>
      <PointReader label={label} points={all.map(({ spoken, href }) => ({ text: spoken, href }))}>
        <div className={styles.rows} aria-hidden="true">
          <AxisRow axis={axis} />
          {all.map((row, index) => (
            <Row key={row.key} row={row} index={index} axis={axis} fleet={fleet} line={even ?? fleet?.estimate.point} />
          ))}
        </div>
      </PointReader>
      {tooFew.length > 0 && (
        <details className={styles.tooFew}>
          <summary>Too few to judge ({tooFew.length})</summary>
          <ul>
            {tooFew.map((row) => (
              <li key={row.key}>
                {row.href === undefined ? row.label : <Link href={row.href}>{row.label}</Link>}:{" "}
                {describeEstimate(row.words)}
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}

interface RowProps {
  readonly row: RateRow;
  readonly index: number;
  readonly axis: RateAxis;
  readonly fleet: RateRow | undefined;
  readonly line: number | undefined;
}

function Row({ row, index, axis, fleet, line }: RowProps) {
  const isFleet = row.key === fleet?.key;
  return (
    <div className={styles.row} data-point={index} data-fleet={isFleet || undefined}>
      <span className={styles.label}>
        {row.href === undefined ? (
          row.label
        ) : (
          <Link href={row.href} tabIndex={-1}>
            {row.label}
          </Link>
        )}
      </span>
      <span className={styles.plot}>
        <svg className={styles.fill} aria-hidden="true">
          {axis.ticks.map(({ at }) => (
            <line key={at} x1={percentOfPlot(at)} x2={percentOfPlot(at)} y1="0" y2="100%" className={marks.guide} />
          ))}
          {line !== undefined && <EvenLine axis={axis} at={line} />}
          <svg y="50%" width="100%" height="1" overflow="visible" aria-hidden="true">
            {isFleet ? (
              <Diamond axis={axis} fleet={row} />
            ) : (
              <IntervalShape estimate={row.estimate} axis={axis} middle={0} />
            )}
          </svg>
        </svg>
      </span>
      <span className={styles.words}>
        {describeEstimate(row.words)}
        {row.jobsHref !== undefined && (
          <>
            {" · "}
            <Link href={row.jobsHref} tabIndex={-1}>
              jobs
            </Link>
          </>
        )}
      </span>
    </div>
  );
}

function AxisRow({ axis }: { readonly axis: RateAxis }) {
  return (
    <div className={styles.axis}>
      <span className={styles.plot}>
        <svg className={styles.axisFill} aria-hidden="true">
          <text x="0" y="12" className={marks.label}>
            {axis.unit}
          </text>
          {axis.ticks.map(({ at, label }) => (
            <text key={at} x={percentOfPlot(at)} y="32" textAnchor="middle" className={marks.label}>
              {label}
            </text>
          ))}
          <line x1="0" x2="100%" y1="39.5" y2="39.5" className={marks.axis} />
        </svg>
      </span>
    </div>
  );
}

function EvenLine({ axis, at }: { readonly axis: RateAxis; readonly at: number }) {
  const x = percentOfPlot(positionOn(axis, at));
  return <line x1={x} x2={x} y1="0" y2="100%" className={marks.fleet} />;
}

/** Spans the fleet's range; its widest place is the fleet's rate. */
function Diamond({ axis, fleet }: { readonly axis: RateAxis; readonly fleet: RateRow }) {
  const { lo, hi, point } = fleet.estimate;
  const from = positionOn(axis, lo);
  const width = positionOn(axis, hi) - from;
  const middle = width > 0 ? (100 * (positionOn(axis, point) - from)) / width : 50;
  return (
    <svg
      x={percentOfPlot(from)}
      y={-7}
      width={percentOfPlot(Math.max(width, 0.004))}
      height="14"
      viewBox="0 0 100 14"
      preserveAspectRatio="none"
      aria-hidden="true"
    >
      <polygon points={`0,7 ${middle},0 100,7 ${middle},14`} className={marks.diamond} />
    </svg>
  );
}
