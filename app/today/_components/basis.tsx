import { HowCounted } from "@/app/_ui/how-counted";
import type { TodayFacts } from "@/db/queries/today";
import { formatCounted } from "@/lib/format/format-count";
import { formatDay } from "@/lib/format/format-day";

interface Props {
  readonly facts: TodayFacts;
}

export function Basis({ facts }: Props) {
  const { closedJobs, units, lastLoad, held } = facts;
  const heldRows = held.reduce((sum, load) => sum + load.rows, 0);
  return (
    <>
      <p>
        {formatCounted(closedJobs, "closed job")} on {formatCounted(units, "known unit")}.{" "}
        <HowCounted of="not-counted" />
      </p>
      {lastLoad !== undefined && (
        <p>
          Last load {formatDay(lastLoad.on)}: {lastLoad.fileName}, {formatCounted(lastLoad.rows, "row")}.
        </p>
      )}
      <p>{heldRows === 0 ? "No rows are held." : `${formatCounted(heldRows, "row")} held back to be corrected.`}</p>
    </>
  );
}
