import type { Day } from "@/lib/calendar/day";
import { type DayCell, dayRuler } from "@/lib/figures/day-ruler";
import styles from "./day-ruler.module.css";

interface Props {
  /** First day of the window. */
  readonly from: Day;
  /** Last day on which the act is still in time. */
  readonly due: Day;
  readonly today: Day;
}

/** A strip of day cells up to a deadline, always beside the days in words. */
export function DayRuler({ from, due, today }: Props) {
  const { cells, words } = dayRuler({ from, due, today });
  return (
    <span className={styles.ruler}>
      <svg className={styles.strip} width={cells.length * pitch + 1} height="15" aria-hidden="true">
        {cells.map((cell, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a cell is its place on the ruler
          <Cell key={index} cell={cell} x={index * pitch} />
        ))}
      </svg>
      <span>{words}</span>
    </span>
  );
}

const pitch = 4;

function Cell({ cell, x }: { readonly cell: DayCell; readonly x: number }) {
  const elapsed = cell === "elapsed" || cell === "due-elapsed";
  return (
    <>
      <rect x={x + 0.5} y="3.5" width="3" height="8" className={elapsed ? styles.elapsed : styles.open} />
      {cell.startsWith("due") && <rect x={x - 0.5} y="1" width="5" height="13" className={styles.due} />}
    </>
  );
}
