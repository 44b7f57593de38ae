"use client";

import { useState } from "react";
import { Button } from "@/app/_ui/button";
import styles from "./twenty-futures.module.css";

interface Props {
  /** The need in twenty futures of equal chance, least first. */
  readonly twenty: readonly number[];
  /** Where the line of stock begins. */
  readonly stock: number;
}

const dot = 22;
/** Columns for single counts; and for runs of them, fewer, so that a phone need not shrink what stands under them. */
const [mostColumns, columnsOfRuns] = [24, 14];
/** Width of a digit under the axis. */
const letter = 9;

/** Twenty dots, one a future, stacked over what each needs; those beyond the stock turn to crosses. */
export function TwentyFutures({ twenty, stock: given }: Props) {
  const most = Math.max(given, ...twenty) + 1;
  const [stock, setStock] = useState(Math.max(0, given));
  const enough = twenty.filter((need) => need <= stock).length;
  const low = Math.max(0, Math.min(...twenty, stock) - 1);
  const high = Math.max(...twenty, stock) + 1;
  const columns = stacks(twenty, low, high);
  const rows = Math.max(...columns.map(({ dots }) => dots), 1);
  const width = columns.length * dot;
  const line = Math.min(
    columns.length,
    columns.findIndex(({ from }) => from > stock) < 0 ? columns.length : columns.findIndex(({ from }) => from > stock),
  );
  const height = rows * dot;
  const longest = Math.max(...columns.map(({ from, to }) => labelOf(from, to).length));
  const labelled = Math.ceil((longest * letter + letter) / dot);
  const beside = Math.max(4, (longest * letter - dot) / 2);
  // Where dots stand for runs of counts, one piece more or fewer would change nothing.
  const stride = (columns[0]?.to ?? 0) - (columns[0]?.from ?? 0) + 1;
  return (
    <div className={styles.futures}>
      <p className={styles.sentence} aria-live="polite">
        Stock of {stock} is enough in {enough} of 20 futures
      </p>
      <svg
        viewBox={`${-beside} -4 ${width + 2 * beside} ${height + 30}`}
        style={{ maxWidth: `${Math.min(720, Math.max(220, width * 1.3))}px` }}
        className={styles.plot}
        role="img"
        aria-label={`Pieces needed in twenty futures: ${twenty.join(", ")}`}
      >
        <line x1="0" x2={width} y1={height} y2={height} className={styles.axis} />
        {columns.map(({ from, to, dots }, column) => (
          <g key={from}>
            {Array.from({ length: dots }, (_, row) => (
              <Mark
                // biome-ignore lint/suspicious/noArrayIndexKey: a dot of a stack has no other name
                key={row}
                x={column * dot + dot / 2}
                y={height - row * dot - dot / 2}
                short={from > stock}
              />
            ))}
            {column % labelled === 0 && (
              <text x={column * dot + dot / 2} y={height + 18} textAnchor="middle" className={styles.label}>
                {labelOf(from, to)}
              </text>
            )}
          </g>
        ))}
        <line x1={line * dot} x2={line * dot} y1="-4" y2={height + 4} className={styles.stock} />
      </svg>
      <div className="cluster no-print">
        <Button type="button" weight="plain" onClick={() => setStock(Math.max(0, stock - stride))}>
          {stride === 1 ? "One fewer" : `${stride} fewer`}
        </Button>
        <Button type="button" weight="plain" onClick={() => setStock(Math.min(most + 50 * stride, stock + stride))}>
          {stride === 1 ? "One more" : `${stride} more`}
        </Button>
      </div>
    </div>
  );
}

function labelOf(from: number, to: number): string {
  return from === to ? String(from) : `${from}–${to}`;
}

function Mark({ x, y, short }: { readonly x: number; readonly y: number; readonly short: boolean }) {
  if (!short) return <circle cx={x} cy={y} r="8" className={styles.dot} />;
  return <path d={`M${x - 6} ${y - 6}l12 12M${x + 6} ${y - 6}l-12 12`} className={styles.cross} />;
}

/** Single counts, or runs of them where a column for each would be too many. */
function stacks(twenty: readonly number[], low: number, high: number) {
  const counts = high - low + 1;
  const step = counts <= mostColumns ? 1 : Math.ceil(counts / columnsOfRuns);
  return Array.from({ length: Math.ceil((high - low + 1) / step) }, (_, column) => {
    const from = low + column * step;
    const to = from + step - 1;
    return { from, to, dots: twenty.filter((need) => need >= from && need <= to).length };
  });
}
