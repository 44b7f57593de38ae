import { percentOfPlot } from "@/lib/figures/percent-of-plot";
import { positionOn, type RateAxis } from "@/lib/figures/rate-axis";
import { describeEstimate, type EstimateWording, formatEstimate } from "@/lib/format/format-estimate";
import type { Estimate } from "@/lib/statistics/estimate";
import styles from "./interval.module.css";
import { IntervalShape } from "./interval-shape";

interface Props extends Omit<EstimateWording, "frame"> {
  readonly estimate: Estimate;
  /** Shared by the whole column and printed in its head by `IntervalAxis`. */
  readonly axis: RateAxis;
  /** Draws the fleet's value as a line through the column. */
  readonly fleet?: Estimate | undefined;
  /** True where an `EstimateText` of the same estimate stands beside it, so that nothing is read out twice. */
  readonly besideText?: boolean;
}

const width = 160;
const height = 20;
/** Longer than any row is high: the table cell cuts the line at its own edges, so it runs on from row to row. */
const rowReach = 500;

/** One estimate as a mark for a table cell: 160 × 20 px on the column's axis. */
export function IntervalMark({ estimate, axis, fleet, besideText = false, ...wording }: Props) {
  const spoken = describeEstimate(formatEstimate(estimate, { ...wording, frame: axis.frame }));
  return (
    <svg
      className={styles.plot}
      width={width}
      height={height}
      role="img"
      aria-label={spoken}
      aria-hidden={besideText || undefined}
    >
      {fleet !== undefined && <FleetLine axis={axis} fleet={fleet} />}
      <IntervalShape estimate={estimate} axis={axis} middle={height / 2} />
    </svg>
  );
}

/** The axis of a column of marks, for its head. */
export function IntervalAxis({ axis }: { readonly axis: RateAxis }) {
  return (
    <svg className={styles.plot} width={width} height={36} aria-hidden="true">
      <text x="0" y={10} className={styles.label}>
        {axis.unit}
      </text>
      <line x1="0" x2="100%" y1={35.5} y2={35.5} className={styles.axis} />
      {axis.ticks.map(({ at, label }) => (
        <g key={at}>
          <text x={percentOfPlot(at)} y={26} textAnchor="middle" className={styles.label}>
            {label}
          </text>
          <line x1={percentOfPlot(at)} x2={percentOfPlot(at)} y1={30} y2={36} className={styles.axis} />
        </g>
      ))}
    </svg>
  );
}

function FleetLine({ axis, fleet }: { readonly axis: RateAxis; readonly fleet: Estimate }) {
  if (fleet.point > axis.max) return null;
  const x = percentOfPlot(positionOn(axis, fleet.point));
  return <line x1={x} x2={x} y1={-rowReach} y2={rowReach} className={styles.fleet} />;
}
