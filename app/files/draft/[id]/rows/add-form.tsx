import { Button } from "@/app/_ui/button";
import type { LoadReport } from "@/db/writes/load-result";
import { actWords } from "../../../_components/act-words";
import { addRows } from "./actions";

interface Props {
  readonly draftId: string;
  readonly report: LoadReport;
}

/** The one act of the page, named by what it does. */
export function AddForm({ draftId, report }: Props) {
  return (
    <form action={addRows}>
      <input type="hidden" name="draft" value={draftId} />
      <Button weight={report.rowsNew + report.rowsChanged > 0 ? "main" : "plain"}>
        {actWords(report, report.fileKind)}
      </Button>
    </form>
  );
}
