import type { FailureRates } from "@/lib/failures/failure-rates";
import type { unplacedUnits } from "@/lib/failures/unplaced-units";
import { formatCounted } from "@/lib/format/format-count";
import { unplacedWords } from "../missing-words";

interface Props {
  readonly leftOut: FailureRates["leftOut"];
  readonly unplaced: ReturnType<typeof unplacedUnits>;
}

/** How many rows could not be used, by what they lack. */
export function NotCounted({ leftOut, unplaced }: Props) {
  if (leftOut.length === 0 && unplaced.length === 0) return null;
  return (
    <div>
      <p>Not counted:</p>
      <ul>
        {leftOut.map(({ reason, jobs }) => (
          <li key={reason}>
            {formatCounted(jobs, "job")}: {reason}
          </li>
        ))}
        {unplaced.map(({ reason, units }) => (
          <li key={reason}>
            {formatCounted(units, "unit")} {unplacedWords[reason]}: no exposure
          </li>
        ))}
      </ul>
    </div>
  );
}
