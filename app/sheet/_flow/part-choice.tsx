import type { ExpectedRange } from "@/lib/domain/reading";
import type { Check } from "@/lib/evidence/check";
import { temperatureIn } from "@/lib/evidence/expected-range";
import { formatRange } from "@/lib/format/format-reading";
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
  const choices = ranges.filter((range) => range.check === check.key && temperatureIn(range.condition) === undefined);
  if (choices.length < 2) return null;
  return (
    <fieldset className={styles.radios}>
      <legend>Which is fitted?</legend>
      {choices.map((range) => {
        const reference = referenceOf(range);
        return (
          <label key={reference}>
            <input
              type="radio"
              name="fitted"
              checked={draft.sheetReference === reference}
              onChange={() =>
                onChange({
                  unit: range.unit,
                  sheetLow: range.low === undefined ? "" : String(range.low),
                  sheetHigh: range.high === undefined ? "" : String(range.high),
                  sheetReference: reference,
                })
              }
            />{" "}
            {range.condition ?? "As the model came"}, {formatRange(range)}
          </label>
        );
      })}
    </fieldset>
  );
}

/** What is noted with the reading: the part, where its range is printed and how far that carries. */
function referenceOf({ condition, source, mark }: ExpectedRange): string {
  return `${condition ?? "as the model came"}: ${source} (${mark})`.slice(0, 200);
}
