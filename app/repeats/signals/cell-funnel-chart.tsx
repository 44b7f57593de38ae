import { PointReader } from "@/app/_charts/point-reader";
import { formatDecimal } from "@/lib/format/format-decimal";
import { type FunnelCell, ratioLimits } from "@/lib/signals/cell-funnel";
import { cellKeyText } from "@/lib/signals/signal-record";
import styles from "../_components/funnel.module.css";
import { limitsWords } from "./limits-words";
import { funnelName } from "./signal-words";

interface Props {
  readonly label: string;
  readonly cells: readonly FunnelCell[];
  readonly spread: number;
}

const [width, height, left, right, top, bottom] = [640, 320, 40, 12, 12, 30] as const;
const lineSteps = 60;

/** Each group by what was expected and how many times that came, between the limits that chance gives a group of that size. */
export function CellFunnelChart({ label, cells, spread }: Props) {
  const [least, largest] = rangeOf(cells.map(({ expected }) => expected));
  const most = Math.min(8, Math.max(2.5, 1.1 * Math.max(...cells.map(ratioOf))));
  const x = (expected: number) =>
    left + ((width - left - right) * Math.log(expected / least)) / Math.log(largest / least);
  const y = (ratio: number) => height - bottom - ((height - bottom - top) * Math.min(ratio, most)) / most;
  const sizes = Array.from({ length: lineSteps + 1 }, (_, i) => least * (largest / least) ** (i / lineSteps));
  const line = (pick: keyof ReturnType<typeof ratioLimits>) =>
    sizes
      .map((expected) => `${tenth(x(expected))},${tenth(y(ratioLimits(expected, spread)[pick] / expected))}`)
      .join(" ");
  const spoken = cells.map((cell) => ({
    text: `${funnelName(cell.key)}: ${cell.observed} counted, ${formatDecimal(cell.expected, 1)} expected, ${limitsWords(cell, spread)}`,
  }));
  return (
    <PointReader label={label} points={spoken}>
      <svg className={styles.funnel} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        <line className={styles.axis} x1={left} x2={width - right} y1={y(0)} y2={y(0)} />
        <line className={styles.middle} x1={left} x2={width - right} y1={y(1)} y2={y(1)} />
        <polyline className={styles.inner} points={line("inner")} />
        <polyline className={styles.inner} points={line("lowInner")} />
        <polyline className={styles.outer} points={line("outer")} />
        <polyline className={styles.outer} points={line("lowOuter")} />
        {[0, 1, 2, 3, 4, 5, 6, 7, 8]
          .filter((ratio) => ratio <= most)
          .map((ratio) => (
            <text key={ratio} className={styles.words} x={left - 8} y={y(ratio) + 4} textAnchor="end">
              {ratio}
            </text>
          ))}
        {[1, 3, 10, 30, 100, 300, 1000]
          .filter((expected) => expected >= least && expected <= largest)
          .map((expected) => (
            <text key={expected} className={styles.words} x={x(expected)} y={height - 8} textAnchor="middle">
              {expected}
            </text>
          ))}
        {cells.map((cell, index) => (
          <g key={cellKeyText(cell.key)} data-point={index}>
            <Dot x={tenth(x(cell.expected))} y={tenth(y(ratioOf(cell)))} cell={cell} spread={spread} />
          </g>
        ))}
      </svg>
    </PointReader>
  );
}

/** Shape tells what colour does: a triangle lies above the solid line. */
function Dot({
  x,
  y,
  cell,
  spread,
}: {
  readonly x: number;
  readonly y: number;
  readonly cell: FunnelCell;
  readonly spread: number;
}) {
  return cell.observed > ratioLimits(cell.expected, spread).outer ? (
    <path className={styles.beyond} d={`M ${x - 6} ${y + 5} L ${x + 6} ${y + 5} L ${x} ${y - 6} Z`} />
  ) : (
    <circle className={styles.ring} cx={x} cy={y} r="4" />
  );
}

/** From the smallest to the largest, wide enough to be drawn where all are alike. */
function rangeOf(expected: readonly number[]): readonly [number, number] {
  const [least, largest] = [Math.min(...expected) / 1.1, Math.max(...expected) * 1.1];
  return [least, Math.max(largest, least * 4)];
}

function ratioOf({ observed, expected }: FunnelCell): number {
  return observed / expected;
}

/** A tenth of a unit is finer than any screen. */
function tenth(place: number): number {
  return Math.round(10 * place) / 10;
}
