import Link from "next/link";
import { Button } from "@/app/_ui/button";
import { Plate } from "@/app/_ui/plate";
import type { EditDifference } from "@/db/queries/edit-differences";
import type { Currency } from "@/lib/domain/money";
import { fieldInWords, valueInWords } from "../field-in-words";
import { settleDifference } from "./actions";

interface Props {
  readonly jobNumber: string;
  readonly differences: readonly EditDifference[];
  readonly currency: Currency;
}

/** Fields that were set here and of which a file says otherwise: a person settles each. */
export function Conflicts({ jobNumber, differences, currency }: Props) {
  const latest = [...new Map(differences.toReversed().map((each) => [each.editId, each])).values()];
  return latest.map(({ editId, column, editedAt, by, batchId, fileName, fileValue, value }) => (
    <Plate key={editId} title={`${fieldInWords(column)}: a file says otherwise`}>
      <p>
        Set here: <strong>{valueInWords(column, value, currency)}</strong>, by {by} on {editedAt.slice(0, 10)}. It
        stands until you settle this.
      </p>
      <p>
        <Link href={`/files/${batchId}`}>Load {batchId}</Link>, {fileName}, says:{" "}
        <strong>{valueInWords(column, fileValue, currency)}</strong>
      </p>
      <form action={settleDifference} className="stack-tight">
        <input type="hidden" name="job" value={jobNumber} />
        <input type="hidden" name="edit" value={editId} />
        <div className="cluster">
          <Button name="settle" value="keep" weight="plain">
            Keep what was set here
          </Button>
          <Button name="settle" value="take" weight="plain">
            Take what the file says
          </Button>
        </div>
      </form>
    </Plate>
  ));
}
