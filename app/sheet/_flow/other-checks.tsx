import type { Proposal } from "@/lib/sheets/next-check";
import type { PlanStep } from "@/lib/sheets/visit-plan";
import { describeReason } from "./reason-words";
import styles from "./sheet.module.css";

interface Props {
  readonly proposal: Proposal;
  readonly step: PlanStep;
  readonly onChoose: (check: string) => void;
}

/**
 * Why this check now, and what may be done before it: checks of the same tier of safety, since a live step never comes before
 * what can be done with the power off.
 */
export function OtherChecks({ proposal, step, onChoose }: Props) {
  if (proposal.kind !== "next") return null;
  const others = proposal.others.filter((other) => other !== step);
  return (
    <section>
      {proposal.step === step && <p className="small soft">{describeReason(proposal.reason)}</p>}
      {others.length > 0 && (
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
      )}
    </section>
  );
}
