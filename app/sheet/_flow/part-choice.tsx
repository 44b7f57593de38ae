import type { ExpectedRange } from "@/lib/domain/reading";
import type { Check } from "@/lib/evidence/check";
import { partRanges, partReference } from "@/lib/evidence/part-ranges";
import { formatRange } from "@/lib/format/format-reading";
import { withRange } from "./noted-range";
import type { ReadingDraft } from "./reading-draft";
import styles from "./sheet.module.css";

interface Props {
  readonly check: Check;
  readonly ranges: readonly ExpectedRange[];
  readonly draft: ReadingDraft;
  readonly onChange: (part: Partial<ReadingDraft>) => void;
}

/** Where a model came with several parts, each with a range of its own: the one that is fitted decides, and is noted with the reading. */
export function PartChoice({ check, ranges, draft, onChange }: Props) {
  const choices = partRanges(check, ranges);
  if (choices.length === 0) return null;
  const isNoted = choices.some((range) => draft.sheetReference === partReference(range));
  return (
    <fieldset className={styles.parted}>
      <legend>Which part is fitted?</legend>
      {choices.map((range) => (
        <label key={partReference(range)}>
          <input
            type="radio"
            name="fitted"
            checked={draft.sheetReference === partReference(range)}
            onChange={() => onChange(withRange(draft, range))}
          />
          <span>
            {range.condition ?? "As the model came"}: <span className="figures">{formatRange(range)}</span>
            <span className={styles.from}>
              {range.source} ({range.mark})
            </span>
          </span>
        </label>
      ))}
      <label>
        <input
          type="radio"
          name="fitted"
          checked={!isNoted && draft.sheetReference === ""}
          onChange={() => onChange({ sheetLow: "", sheetHigh: "", sheetReference: "" })}
        />
        <span>
          Cannot tell
          <span className={styles.from}>then a reading that one part may show and another not proves nothing</span>
        </span>
      </label>
    </fieldset>
  );
}
