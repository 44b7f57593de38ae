import { useEffect, useRef } from "react";
import { ReadingGauge } from "@/app/_charts/reading-gauge";
import { Notice } from "@/app/_ui/notice";
import { inUnit } from "@/lib/evidence/units";
import { formatOutcome, formatRange } from "@/lib/format/format-reading";
import type { Question } from "./ask-about";
import styles from "./sheet.module.css";

interface Props {
  readonly question: Question;
  readonly onKeep: () => void;
  /** Keeps this take and asks for another. */
  readonly onAgain: () => void;
  /** The meter showed this, in the same unit unless another is named. */
  readonly onInstead: (shown: { readonly unit?: string; readonly text: string }) => void;
}

/** One question about a reading that is outside its range, or that proves nothing. It is never refused. */
export function AskBack(props: Props) {
  const { question } = props;
  const place = useRef<HTMLDivElement>(null);
  // The field that was typed in is gone: reading goes on here.
  useEffect(() => {
    if (question !== undefined) place.current?.focus();
  }, [question]);
  return (
    <div ref={place} tabIndex={-1} className={styles.asked}>
      {question.kind === "unit" || question.kind === "point" ? (
        <Slip {...props} slip={question} />
      ) : (
        <Outside {...props} />
      )}
    </div>
  );
}

/** Unit or decimal point, where the same digits would lie inside the range. */
function Slip({
  question: { taken, range },
  slip,
  onKeep,
  onInstead,
}: Props & { readonly slip: Extract<Question, { readonly kind: "unit" | "point" }> }) {
  const found = formatOutcome(taken.outcome);
  const { words, text } = slip;
  return (
    <Notice
      status="note"
      title={`${found} lies far outside ${range === undefined ? "its range" : formatRange(range)}. Did the meter show ${words}?`}
    >
      <div className={styles.choices}>
        <button
          type="button"
          className={styles.choice}
          onClick={() => onInstead(slip.kind === "unit" ? { unit: slip.unit, text } : { text })}
        >
          It was {words}
        </button>
        <button type="button" className={styles.choice} onClick={onKeep}>
          No, keep {found}
        </button>
      </div>
    </Notice>
  );
}

function Outside({ question, onKeep, onAgain }: Props) {
  const { taken, range, kind } = question;
  const isOutside = kind === "outside";
  return (
    <Notice
      status={isOutside ? "note" : "watch"}
      title={isOutside ? "Outside its range: that is evidence, not a mistake" : "This proves nothing"}
    >
      {isOutside && range !== undefined && (
        <ReadingGauge outcome={inRangeUnit(taken.outcome, range.unit)} expected={range} />
      )}
      {kind === "proves nothing" && (
        <p>
          <span className="figures">{formatOutcome(taken.outcome)}</span> — {question.why} It stays in the record and is
          never used as proof.
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
