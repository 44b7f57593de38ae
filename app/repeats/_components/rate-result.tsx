import Link from "next/link";
import { EmptyState } from "@/app/_ui/empty-state";
import type { FailureRates, GroupRate } from "@/lib/failures/failure-rates";
import type { RateOrder } from "../read-rate-question";
import { canBeJudged } from "../sorted-groups";
import { RateChart } from "./rate-chart";
import { RateTable } from "./rate-table";

interface Props {
  readonly groups: readonly GroupRate[];
  readonly rates: FailureRates;
  /** Query string of this very view. */
  readonly address: string;
  readonly order: RateOrder;
}

/** The groups as a drawing with its table, and behind a fold those that are too small to judge. */
export function RateResult({ groups, rates, address, order }: Props) {
  const judged = groups.filter(canBeJudged);
  const small = groups.filter((group) => !canBeJudged(group));
  if (groups.length === 0) {
    return (
      <EmptyState kind="filtered-away" title="No unit was at risk in this view">
        <p>
          <Link href="/repeats">Show all units</Link>, or widen the filter.
        </p>
      </EmptyState>
    );
  }
  return (
    <>
      {judged.length > 0 && <RateChart groups={judged} rates={rates} address={address} order={order} />}
      {small.length > 0 && (
        <details>
          <summary>Too few to judge ({small.length})</summary>
          <RateTable caption="Groups with less than 10 unit-years: never ranked" rows={small} rates={rates} />
        </details>
      )}
    </>
  );
}
