import { PointReader } from "@/app/_charts/point-reader";
import { formatShare } from "@/lib/format/format-share";
import { shareFunnel } from "@/lib/signals/share-funnel";
import styles from "../_components/funnel.module.css";
import { againstLimits, type ShareOf } from "./visit-rows";

interface Props {
  readonly label: string;
  /** Share of all together, in (0, 1). */
  readonly overall: number;
  readonly points: readonly { readonly name: string; readonly share: ShareOf }[];
}

const [width, height, left, bottom] = [640, 300, 56, 30] as const;

/** Each group by its size and share, between the limits that chance alone gives a group of that size. */
export function ShareFunnelChart({ label, overall, points }: Props) {
  const trials = points.map(({ share }) => share.trials);
  const [least, largest] = [Math.max(1, Math.min(...trials) / 3), 1.2 * Math.max(10, ...trials)];
  const ends = shareFunnel({ trials: Math.round(least), share: overall });
  const lowest = Math.min(ends.low998, ...points.map(({ share }) => share.point));
  const highest = Math.max(ends.high998, ...points.map(({ share }) => share.point), lowest + 0.02);
  const x = (size: number) =>
    left + ((width - left - 10) * Math.log(Math.max(size, least) / least)) / Math.log(largest / least);
  const y = (share: number) => height - bottom - 8 - ((height - bottom - 24) * (share - lowest)) / (highest - lowest);
  const sizes = Array.from({ length: 41 }, (_, i) => Math.max(1, Math.round(least * (largest / least) ** (i / 40))));
  const line = (pick: "low95" | "high95" | "low998" | "high998") =>
    sizes.map((size) => `${tenth(x(size))},${tenth(y(shareFunnel({ trials: size, share: overall })[pick]))}`).join(" ");
  const spoken = points.map(({ name, share }) => ({
    text: `${name}: ${formatShare(share.point, 0)} in 100, ${share.events} of ${share.trials} jobs, ${againstLimits(share)}`,
  }));
  return (
    <PointReader label={label} points={spoken}>
      <svg className={styles.funnel} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        <line className={styles.axis} x1={left} x2={width - 10} y1={height - bottom} y2={height - bottom} />
        <line className={styles.middle} x1={left} x2={width - 10} y1={y(overall)} y2={y(overall)} />
        {(["low95", "high95"] as const).map((pick) => (
          <polyline key={pick} className={styles.inner} points={line(pick)} />
        ))}
        {(["low998", "high998"] as const).map((pick) => (
          <polyline key={pick} className={styles.outer} points={line(pick)} />
        ))}
        {[lowest, overall, highest].map((share) => (
          <text key={share} className={styles.words} x={left - 6} y={y(share) + 4} textAnchor="end">
            {formatShare(share, 0)}
          </text>
        ))}
        {[1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000]
          .filter((size) => size >= least && size <= largest)
          .map((size) => (
            <text key={size} className={styles.words} x={x(size)} y={height - 8} textAnchor="middle">
              {size}
            </text>
          ))}
        {points.map(({ name, share }, index) => (
          <g key={name} data-point={index}>
            <circle className={styles.dot} cx={x(share.trials)} cy={y(share.point)} r="6" />
            {isBeyond(share) && (
              <text className={styles.words} x={x(share.trials) - 10} y={y(share.point) - 10} textAnchor="end">
                {name}
              </text>
            )}
          </g>
        ))}
      </svg>
    </PointReader>
  );
}

/** Only these are named in the drawing: of the others so many lie together that nobody could read their names. */
function isBeyond({ point, limits }: ShareOf): boolean {
  return limits !== undefined && (point < limits.low998 || point > limits.high998);
}

/** A tenth of a unit is finer than any screen. */
function tenth(place: number): number {
  return Math.round(10 * place) / 10;
}
