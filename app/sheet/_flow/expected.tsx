import type { JudgedRange } from "@/lib/evidence/expected-range";
import { formatRange } from "@/lib/format/format-reading";
import styles from "./sheet.module.css";

interface Props {
  /** What the catalogue says in words. */
  readonly expect: string;
  readonly range: JudgedRange | undefined;
  /** The fitted part decides, and nobody has said yet which it is. */
  readonly isOfParts: boolean;
}

/** The expected range with its unit, source and mark, before anything is typed. */
export function Expected({ expect, range, isOfParts }: Props) {
  return (
    <div className={styles.expected}>
      <p>
        <strong>Expected: </strong>
        {range === undefined ? (
          isOfParts ? (
            "the range of the part that is fitted"
          ) : (
            expect
          )
        ) : (
          <span className={styles.range}>{formatRange(range)}</span>
        )}
      </p>
      <p className="small soft">
        {isOfParts
          ? "This model came with several. Say which, and its range stands here."
          : range === undefined
            ? "No range is on file: note the one of the sheet in the machine."
            : sourceOf(range)}
      </p>
    </div>
  );
}

function sourceOf({ source, mark, screensOnly, basis }: JudgedRange): string {
  const from = `${source} (${mark})`;
  if (screensOnly)
    return `${from}. So wide that it decides nothing but an open or shorted part: note the sheet’s own range.`;
  return basis === "general" ? `${from}; the model sheet decides.` : `${from}.`;
}
