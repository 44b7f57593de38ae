import type { ReadingOutcome } from "@/lib/domain/reading";
import type { Check } from "@/lib/evidence/check";
import { capitalised } from "@/lib/format/capitalised";
import styles from "./sheet.module.css";

interface Props {
  readonly check: Check;
  readonly onTake: (outcome: ReadingOutcome) => void;
}

const leads = {
  good: "leads on",
  bad: "speaks against the part or its path",
  outside: "a cause outside the part",
} as const;

/** Words from the check's own list, one of which is the answer and the next step at once. */
export function FindingInput({ check, onTake }: Props) {
  return (
    <div className={styles.findings}>
      <p className={styles.label}>What do you find?</p>
      {Object.entries(check.findings).map(([word, { means, state }]) => (
        <button key={word} type="button" className={styles.finding} onClick={() => onTake({ kind: "finding", word })}>
          <span>{capitalised(means)}</span>
          <span className="small soft">{leads[state]}</span>
        </button>
      ))}
      <button type="button" className={styles.finding} onClick={() => onTake({ kind: "no_reading" })}>
        <span>Cannot tell</span>
        <span className="small soft">kept, proves nothing</span>
      </button>
    </div>
  );
}
