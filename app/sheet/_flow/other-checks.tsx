import type { PlanStep } from "@/lib/sheets/visit-plan";
import styles from "./sheet.module.css";

interface Props {
  /** Of the same tier of safety: a live step never comes before what can be done with the power off. */
  readonly others: readonly PlanStep[];
  readonly onChoose: (check: string) => void;
}

export function OtherChecks({ others, onChoose }: Props) {
  if (others.length === 0) return null;
  return (
    <details className={styles.more}>
      <summary>Do another check first</summary>
      <div className={styles.choices}>
        {others.map(({ check, minutes }) => (
          <button key={check.key} type="button" className={styles.choice} onClick={() => onChoose(check.key)}>
            {check.name}, {minutes} min
          </button>
        ))}
      </div>
    </details>
  );
}
