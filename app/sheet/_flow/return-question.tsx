import { Notice } from "@/app/_ui/notice";
import { formatCounted } from "@/lib/format/format-count";
import { suggestedReturn } from "@/lib/sheets/suggested-return";
import type { ClosingDraft } from "./closing-draft";
import styles from "./sheet.module.css";
import type { SheetView } from "./sheet-view";
import { Choose } from "./small-fields";

interface Props {
  readonly view: SheetView;
  readonly draft: ClosingDraft;
  readonly onChange: (part: Partial<ClosingDraft>) => void;
}

/** Whether the visit returns to an earlier job: suggested by the company's rule for repeats, decided by whoever was there. */
export function ReturnQuestion({ view, draft, onChange }: Props) {
  const { earlier, symptom, requestedOn, repeatDays } = view;
  if (earlier.length === 0) return null;
  const component = draft.component === "" ? undefined : draft.component;
  const suggested = suggestedReturn({ symptom, component, requestedOn, repeatDays, earlier });
  return (
    <>
      {suggested !== undefined && !draft.isReturnSettled && draft.callbackOf === "" && (
        <Notice status="note" title={`This looks like a return to job ${suggested.jobNumber}`}>
          <p>
            The same {suggested.same === "component" ? "component" : "complaint"} on this unit, completed{" "}
            {suggested.days === 0 ? "on the day on which" : `${formatCounted(suggested.days, "day")} before`} this was
            asked for; your shop counts returns within {formatCounted(repeatDays, "day")}.
          </p>
          <div className={styles.choices}>
            <button
              type="button"
              className={styles.choice}
              onClick={() => onChange({ callbackOf: suggested.jobNumber, isReturnSettled: true })}
            >
              Yes, it returns to it
            </button>
            <button type="button" className={styles.choice} onClick={() => onChange({ isReturnSettled: true })}>
              No, it is another matter
            </button>
          </div>
        </Notice>
      )}
      <Choose
        label="Does it return to an earlier job?"
        value={draft.callbackOf}
        none="No"
        choices={earlier.slice(0, 8).map(({ jobNumber, completedOn }) => [jobNumber, `${jobNumber}, ${completedOn}`])}
        onChoose={(callbackOf) => onChange({ callbackOf, isReturnSettled: true })}
      />
    </>
  );
}
