import { percentOfPlot } from "@/lib/figures/percent-of-plot";
import { positionOn, type RateAxis } from "@/lib/figures/rate-axis";
import type { Estimate } from "@/lib/statistics/estimate";
import { gradeOf } from "@/lib/statistics/estimate-grade";
import styles from "./interval.module.css";

interface Props {
  readonly estimate: Estimate;
  readonly axis: RateAxis;
  /** Where its middle line runs, in px from the top of the svg it stands in. */
  readonly middle: number;
}

/**
 * Outer band for the range, inner band for its middle half, dot for the point; the grade shows in the shape: filled dot
 * and solid band, ring and dashed edge, or a hatched band without any dot.
 * To be placed inside an svg; its x positions are shares of that svg's width.
 */
export function IntervalShape({ estimate, axis, middle }: Props) {
  const grade = gradeOf(estimate);
  const from = positionOn(axis, estimate.lo);
  const to = positionOn(axis, estimate.hi);
  const cut = estimate.hi > axis.max && <CutEnd middle={middle} />;
  if (grade === "thin") {
    return (
      <>
        <Hatching from={from} to={to} middle={middle} />
        {cut}
      </>
    );
  }
  const edge = grade === "loose" ? styles.dashed : styles.solid;
  return (
    <>
      <Band from={from} to={to} middle={middle} height={6} className={`${styles.outer} ${edge}`} />
      <Band
        from={positionOn(axis, estimate.innerLo)}
        to={positionOn(axis, estimate.innerHi)}
        middle={middle}
        height={12}
        className={`${styles.inner} ${edge}`}
      />
      {cut}
      {estimate.point <= axis.max && (
        <circle
          cx={percentOfPlot(positionOn(axis, estimate.point))}
          cy={middle}
          r={4}
          className={grade === "firm" ? styles.dot : styles.ring}
        />
      )}
    </>
  );
}

interface BandProps {
  readonly from: number;
  readonly to: number;
  readonly middle: number;
  readonly height: number;
  readonly className: string;
}

function Band({ from, to, middle, height, className }: BandProps) {
  const x = percentOfPlot(from);
  return <rect x={x} y={middle - height / 2} width={percentOfPlot(to - from)} height={height} className={className} />;
}

/** Slanted strokes, long enough for any page, cut to the band by the inner drawing's own edge. */
function Hatching({ from, to, middle }: Pick<BandProps, "from" | "to" | "middle">) {
  const strokes = Array.from({ length: 200 }, (_, i) => `M${i * 6 - 6} 6l6-6`).join("");
  const place = { x: percentOfPlot(from), y: middle - 3, width: percentOfPlot(to - from), height: 6 };
  return (
    <>
      <svg {...place} className={styles.clip} aria-hidden="true">
        <path d={strokes} className={styles.hatch} />
      </svg>
      <rect {...place} className={styles.hatchEdge} />
    </>
  );
}

/** The range goes on past the end of the axis. */
function CutEnd({ middle }: { readonly middle: number }) {
  return (
    <svg x="100%" y={middle - 6} width="8" height="12" overflow="visible" aria-hidden="true">
      <path d="M0 1l6 5-6 5" className={styles.cut} />
    </svg>
  );
}
