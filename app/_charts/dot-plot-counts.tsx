import Link from "next/link";
import type { CountRows } from "@/lib/figures/count-rows";
import { percentOfPlot } from "@/lib/figures/percent-of-plot";
import { formatCount } from "@/lib/format/format-count";
import styles from "./dot-interval-rows.module.css";
import marks from "./interval.module.css";
import { PointReader } from "./point-reader";

interface Props {
  readonly label: string;
  /** What is counted, on the axis: "jobs". */
  readonly unit: string;
  readonly figure: CountRows;
}

/** Counts as dots on one axis from 0: position carries the number. */
export function DotPlotCounts({ label, unit, figure }: Props) {
  const points = figure.rows.map(({ spoken, href }) => ({ text: `${spoken} ${unit}`, href }));
  return (
    <PointReader label={label} points={points}>
      <div className={styles.counts} aria-hidden="true">
        {figure.rows.map((row, index) => (
          <div key={row.key} className={styles.row} data-point={index}>
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
                <line x1="0" x2={percentOfPlot(row.at)} y1="50%" y2="50%" className={marks.stem} />
                <circle cx={percentOfPlot(row.at)} cy="50%" r="4.5" className={marks.dot} />
              </svg>
            </span>
            <span className={`${styles.count} figures`}>{formatCount(row.count)}</span>
          </div>
        ))}
        <div className={styles.axis}>
          <span className={styles.plot}>
            <svg className={styles.axisFill} aria-hidden="true">
              <line x1="0" x2="100%" y1="0.5" y2="0.5" className={marks.axis} />
              {figure.ticks.map(({ at, label: tick }) => (
                <text key={at} x={percentOfPlot(at)} y="18" textAnchor="middle" className={marks.label}>
                  {tick}
                </text>
              ))}
              <text x="0" y="38" className={marks.label}>
                {unit}
              </text>
            </svg>
          </span>
        </div>
      </div>
    </PointReader>
  );
}
