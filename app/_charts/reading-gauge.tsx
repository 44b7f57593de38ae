import type { ReadingOutcome } from "@/lib/domain/reading";
import { percentOfPlot } from "@/lib/figures/percent-of-plot";
import { readingGauge } from "@/lib/figures/reading-gauge";
import { describeAgainstRange, formatOutcome, formatRange, type OpenRange } from "@/lib/format/format-reading";
import styles from "./reading-gauge.module.css";

interface Props {
  readonly outcome: ReadingOutcome;
  /** In the unit of the reading. */
  readonly expected: OpenRange;
}

/** Expected range as a bar between brackets, the reading as a tick, and both in words. No zone is good or bad by colour. */
export function ReadingGauge({ outcome, expected }: Props) {
  const value = outcome.kind === "number" ? outcome.value : undefined;
  const verdict = value === undefined ? `Expected ${formatRange(expected)}` : describeAgainstRange(value, expected);
  return (
    <div className={styles.gauge}>
      <Drawing expected={expected} value={value} />
      <p className={styles.words}>
        <span className="figures">{formatOutcome(outcome)}</span> — {verdict}
      </p>
    </div>
  );
}

function Drawing({ expected, value }: { readonly expected: OpenRange; readonly value: number | undefined }) {
  const gauge = readingGauge(expected, value);
  if (gauge.kind === "no-range") return null;
  const { from, to, lowOpen, highOpen, ends, reading } = gauge;
  return (
    <svg className={styles.plot} width="100%" height="46" aria-hidden="true">
      <line x1="0" x2="100%" y1="18" y2="18" className={styles.scale} />
      <rect x={percentOfPlot(from)} y="14" width={percentOfPlot(to - from)} height="8" className={styles.bar} />
      <End at={from} path={lowOpen ? "M0-7l-7 7 7 7" : "M6-9h-6v18h6"} />
      <End at={to} path={highOpen ? "M0-7l7 7-7 7" : "M-6-9h6v18h-6"} />
      {ends.map(({ at, label }) => (
        <text key={label} x={percentOfPlot(at)} y="42" textAnchor="middle" className={styles.label}>
          {label}
        </text>
      ))}
      {reading !== undefined && (
        <svg x={percentOfPlot(reading.at)} y="18" overflow="visible" aria-hidden="true">
          <path d="M0-17v34" className={styles.reading} />
          {reading.beyond === "left" && <path d="M-3-5l-6 5 6 5" className={styles.beyond} />}
          {reading.beyond === "right" && <path d="M3-5l6 5-6 5" className={styles.beyond} />}
        </svg>
      )}
    </svg>
  );
}

function End({ at, path }: { readonly at: number; readonly path: string }) {
  return (
    <svg x={percentOfPlot(at)} y="18" overflow="visible" aria-hidden="true">
      <path d={path} className={styles.end} />
    </svg>
  );
}
