import { Button } from "@/app/_ui/button";
import { StatusWord } from "@/app/_ui/status-word";
import type { AskLine } from "@/db/queries/sheet-lists";
import { formatDay } from "@/lib/format/format-day";
import type { AskableGap } from "@/lib/sheets/askable-gaps";
import { ask } from "./actions";

interface Props {
  readonly jobNumber: string;
  readonly gap: AskableGap;
  readonly ask: AskLine | undefined;
}

export function GapRow({ jobNumber, gap, ask: asked }: Props) {
  return (
    <form action={ask} className="stack-tight">
      <p>
        <strong>{gap.label}</strong>
      </p>
      <p className="small soft">
        {gap.whatWouldFixIt} {gap.canStillBeHad ? "It can still be had." : "It can hardly be had after the repair."}
      </p>
      <input type="hidden" name="job" value={jobNumber} />
      <input type="hidden" name="item" value={gap.item} />
      {asked === undefined || asked.answer !== undefined ? (
        <>
          {asked?.answer !== undefined && (
            <StatusWord status="note">{`Answered: ${asked.answer}${asked.note === "" ? "" : `, ${asked.note}`}`}</StatusWord>
          )}
          <Button weight="plain">{asked === undefined ? "Ask technician" : "Ask again"}</Button>
        </>
      ) : (
        <StatusWord status="watch">{`Asked ${formatDay(asked.askedOn)}`}</StatusWord>
      )}
    </form>
  );
}
