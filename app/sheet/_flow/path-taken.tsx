import { checkOf } from "@/lib/evidence/checks";
import { formatOutcome } from "@/lib/format/format-reading";
import { skipReasons } from "@/lib/sheets/sheet-answer";
import type { Walk, WalkedStep } from "@/lib/sheets/walk";
import styles from "./sheet.module.css";

interface Props {
  readonly walked: Walk;
  readonly onChange?: (check: string) => void;
}

/** Every answer in the order in which it was given, earlier takes too, with what it shows; and what it made needless. */
export function PathTaken({ walked, onChange }: Props) {
  if (walked.path.length === 0) return null;
  return (
    <section className={styles.path}>
      <h3>Path so far</h3>
      <ol>
        {walked.path.map((each) => (
          <li key={each.answer.id}>
            <strong>{nameOf(each)}</strong>: {saidBy(each)}
            {onChange !== undefined && (
              <>
                {" "}
                <button type="button" className={styles.change} onClick={() => onChange(each.answer.check)}>
                  Change<span className="only-heard"> {nameOf(each)}</span>
                </button>
              </>
            )}
          </li>
        ))}
      </ol>
      {walked.needless.length > 0 && walked.verdict.kind !== "open" && (
        <p className="small soft">
          Not needed after this: {walked.needless.map(({ check }) => check.name.toLowerCase()).join(", ")}.
        </p>
      )}
    </section>
  );
}

function nameOf({ answer, step }: WalkedStep): string {
  return step?.check.name ?? checkOf(answer.check)?.name ?? answer.check;
}

export function saidBy({ answer, judged }: WalkedStep): string {
  if (answer.given.kind === "skip") return `passed over, ${skipReasons[answer.given.reason].toLowerCase()}`;
  const found = formatOutcome(answer.given.outcome);
  const judgement = judged?.judgement;
  switch (judgement?.kind) {
    case undefined:
      return found;
    case "finding":
      return judgement.finding.means;
    case "code":
      return found;
    case "inside":
      return `${found}, inside its range${judgement.range.screensOnly ? ", which decides nothing" : ""}`;
    case "below":
    case "above":
      return `${found}, ${judgement.kind} its range`;
    case "open":
    case "short":
      return `${found}, ${judgement.good ? "as it should be" : "not as it should be"}`;
    case "proves_nothing":
      return `${found}, proves nothing: ${judgement.why}`;
  }
}
