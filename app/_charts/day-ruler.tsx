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

/**
 * A strip of day cells up to a deadline, always beside the days in words. The cells of a kind are one figure: a list of
 * claims has hundreds of strips, and an element for each day was most of what that page cost.
 */
export function DayRuler({ from, due, today }: Props) {
  const { cells, words } = dayRuler({ from, due, today });
  const isGone = (cell: DayCell) => cell === "elapsed" || cell === "due-elapsed";
  const elapsed = cells.filter(isGone).length;
  const [startOfOpen, end] = [elapsed * pitch, cells.length * pitch];
  return (
    <span className={styles.ruler}>
      <svg className={styles.strip} width={end + 1} height="15" aria-hidden="true">
        {elapsed > 0 && <rect x="0" y="3" width={startOfOpen} height="9" className={styles.elapsed} />}
        {startOfOpen < end && (
          <>
            <path d={`M${startOfOpen} 3.5H${end}M${startOfOpen} 11.5H${end}`} className={styles.edges} />
            <path d={`M${startOfOpen} 7.5H${end}`} className={styles.sides} />
          </>
        )}
        <rect x={end - pitch - 0.5} y="1" width="5" height="13" className={styles.due} />
      </svg>
      <span>{words}</span>
    </span>
  );
}

/** A cell is four wide with its edges; those of neighbours touch. The sides are dashes of as much, see `sides` in the styles. */
const pitch = 4;
