import { type SkipReason, skipReasons } from "@/lib/sheets/sheet-answer";
import styles from "./sheet.module.css";

/** A step is passed over with one of four reasons, never silently. */
export function SkipPanel({ onSkip }: { readonly onSkip: (reason: SkipReason) => void }) {
  return (
    <fieldset className="bare">
      <legend className={styles.label}>Why is this step passed over?</legend>
      <div className={styles.reasons}>
        {Object.entries(skipReasons).map(([reason, words]) => (
          <button key={reason} type="button" className={styles.choice} onClick={() => onSkip(reason as SkipReason)}>
            {words}
          </button>
        ))}
      </div>
    </fieldset>
  );
}
