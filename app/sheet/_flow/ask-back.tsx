import { ReadingGauge } from "@/app/_charts/reading-gauge";
import { Notice } from "@/app/_ui/notice";
import { inUnit } from "@/lib/evidence/units";
import { formatOutcome, formatRange } from "@/lib/format/format-reading";
import type { Question } from "./ask-about";
import type { ReadingDraft } from "./reading-draft";
import styles from "./sheet.module.css";

interface Props {
  readonly question: Question;
  readonly onKeep: () => void;
  /** Keeps this take and asks for another. */
  readonly onAgain: () => void;
  readonly onInstead: (part: Partial<ReadingDraft>) => void;
}

/** One question about a reading that is outside its range, or that proves nothing. It is never refused. */
export function AskBack({ question, onKeep, onAgain, onInstead }: Props) {
  const { taken, range } = question;
  const found = formatOutcome(taken.outcome);
  if (question.kind === "unit" || question.kind === "point") {
    const { words, text } = question;
    const part = question.kind === "unit" ? { unit: question.unit, text } : { text };
    return (
      <Notice
        status="note"
        title={`${found} lies far outside ${range === undefined ? "its range" : formatRange(range)}. Did the meter show ${words}?`}
      >
        <div className={styles.choices}>
          <button type="button" className={styles.choice} onClick={() => onInstead(part)}>
            It was {words}
          </button>
          <button type="button" className={styles.choice} onClick={onKeep}>
            No, keep {found}
          </button>
        </div>
      </Notice>
    );
  }
  const isOutside = question.kind === "outside";
  return (
    <Notice
      status={isOutside ? "note" : "watch"}
      title={isOutside ? "Outside its range: that is evidence, not a mistake" : "This proves nothing"}
    >
      {isOutside && range !== undefined && (
        <ReadingGauge outcome={inRangeUnit(taken.outcome, range.unit)} expected={range} />
      )}
      {!isOutside && (
        <p>
          <span className="figures">{found}</span> — {question.why} It stays in the record and is never used as proof.
        </p>
      )}
      <div className={styles.choices}>
        <button type="button" className={styles.choice} onClick={onAgain}>
          Measure again
        </button>
        <button type="button" className={styles.choice} onClick={onKeep}>
          Keep it
        </button>
      </div>
    </Notice>
  );
}

function inRangeUnit(outcome: Question["taken"]["outcome"], unit: string): Question["taken"]["outcome"] {
  if (outcome.kind !== "number") return outcome;
  const value = inUnit(outcome.value, outcome.unit, unit);
  return value === undefined ? outcome : { kind: "number", value, unit };
}
