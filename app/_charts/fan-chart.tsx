import type { Fan } from "@/lib/figures/fan";
import { bandPath, linePath, meanPath } from "@/lib/figures/fan-paths";
import { percentOfPlot } from "@/lib/figures/percent-of-plot";
import { formatCount } from "@/lib/format/format-count";
import styles from "./fan-chart.module.css";
import marks from "./interval.module.css";
import { PointReader } from "./point-reader";

interface Props {
  readonly label: string;
  readonly wide: Fan;
  /** Fewer months, for a phone. */
  readonly narrow: Fan;
}

const height = 260;

/** What was used as dots, what is expected as a fan of three bands; the broken line is their mean, and no course of its own. */
export function FanChart({ label, wide, narrow }: Props) {
  return (
    <>
      <div className={styles.wide}>
        <OneFan label={label} fan={wide} />
      </div>
      <div className={styles.narrow}>
        <OneFan label={label} fan={narrow} />
      </div>
    </>
  );
}

function OneFan({ label, fan }: { readonly label: string; readonly fan: Fan }) {
  const points = [...fan.seen, ...fan.ahead].map(({ spoken }) => ({ text: spoken }));
  const y = (count: number) => percentOfPlot(1 - count / fan.max);
  return (
    <PointReader label={label} points={points}>
      <div className={styles.fan} aria-hidden="true">
        <span className={styles.unit}>pieces a month</span>
        <svg className={styles.counts} width="44" height={height} aria-hidden="true">
          {fan.ticks.map((tick) => (
            <text key={tick} x="36" y={y(tick)} dy="0.35em" textAnchor="end" className={marks.label}>
              {formatCount(tick)}
            </text>
          ))}
        </svg>
        <svg className={styles.plot} width="100%" height={height} aria-hidden="true">
          {fan.ticks.map((tick) => (
            <line
              key={tick}
              x1="0"
              x2="100%"
              y1={y(tick)}
              y2={y(tick)}
              className={tick === 0 ? marks.axis : marks.guide}
            />
          ))}
          <svg viewBox="0 0 1000 1000" preserveAspectRatio="none" width="100%" height="100%" aria-hidden="true">
            {(["band90", "band60", "band30"] as const).map((band) => (
              <path key={band} d={bandPath(fan, band)} className={styles[band]} />
            ))}
            <path d={linePath(fan)} className={styles.line} />
            <path d={meanPath(fan)} className={styles.mean} />
          </svg>
          <line x1={percentOfPlot(fan.today)} x2={percentOfPlot(fan.today)} y1="0" y2="100%" className={styles.today} />
          <text x={percentOfPlot(fan.today)} y="-4" textAnchor="middle" className={marks.label}>
            today
          </text>
          {fan.seen.map(({ at, count, spoken }, index) => (
            <circle
              key={spoken}
              data-point={index}
              cx={percentOfPlot(at)}
              cy={y(count)}
              r="3.5"
              className={styles.seen}
            />
          ))}
          {fan.ahead.map(({ at, spoken }, index) => (
            <rect
              key={spoken}
              data-point={fan.seen.length + index}
              x={percentOfPlot(at - 0.4 / points.length)}
              y="0"
              width={percentOfPlot(0.8 / points.length)}
              height="100%"
              className={styles.column}
            />
          ))}
        </svg>
        <svg className={styles.months} width="100%" height="26" aria-hidden="true">
          {fan.labels.map(({ at, text }) => (
            <text key={text} x={percentOfPlot(at)} y="18" textAnchor="middle" className={marks.label}>
              {text}
            </text>
          ))}
        </svg>
      </div>
    </PointReader>
  );
}
