import { Button } from "@/app/_ui/button";
import fieldStyles from "@/app/_ui/field.module.css";
import type { AlikeProblems } from "../../../_components/alike-problems";
import type { OpenDraft } from "../../../_draft/open-draft";
import { correctCells } from "./actions";

interface Props {
  readonly draft: OpenDraft;
  readonly group: AlikeProblems;
}

/** Corrects the cell on all rows that are wrong alike. */
export function CorrectionCell({ draft: { draftId, matching }, group: { column, value, rows } }: Props) {
  if (matching?.columns.every(({ source }) => source !== column)) return <>in the file, or after adding</>;
  return (
    <form action={correctCells} className="cluster">
      <input type="hidden" name="draft" value={draftId} />
      <input type="hidden" name="column" value={column} />
      <input type="hidden" name="rows" value={rows.join(",")} />
      <input
        name="text"
        aria-label={`${column} in row ${rows[0]} is to be`}
        defaultValue={value}
        className={fieldStyles.input}
        data-width="short"
      />
      <Button weight="plain">{rows.length === 1 ? "Correct" : `Correct all ${rows.length} alike`}</Button>
    </form>
  );
}
