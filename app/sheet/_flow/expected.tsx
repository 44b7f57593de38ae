import type { JudgedRange } from "@/lib/evidence/expected-range";
import { formatRange } from "@/lib/format/format-reading";
import styles from "./sheet.module.css";

interface Props {
  /** What the catalogue says in words. */
  readonly expect: string;
  readonly range: JudgedRange | undefined;
}

/** The expected range with its unit, source and mark, before anything is typed. */
export function Expected({ expect, range }: Props) {
  return (
    <div className={styles.expected}>
      <p>
        <strong>Expected: </strong>
        {range === undefined ? expect : <span className={styles.range}>{formatRange(range)}</span>}
      </p>
      <p className="small soft">
        {range === undefined ? "No range is on file: note the one of the sheet in the machine." : sourceOf(range)}
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
