import Link from "next/link";
import { RateResult } from "@/app/repeats/_components/rate-result";
import { dayNumber } from "@/lib/calendar/day-number";
import { formatCounted } from "@/lib/format/format-count";
import { lifeQuery } from "../../life-address";
import { type DrawnLife, type RowGrouping, rowGroupings } from "../../load-component-life";
import { rateAddress } from "../../rate-address";
import { dimensionNames } from "../../rate-wording";
import { usualOrder } from "../../read-rate-question";
import { canBeJudged, nameOf, sortedGroups } from "../../sorted-groups";

/** The failures of this view in rows, by what the reader chooses. */
export function GroupRows({ view }: { readonly view: DrawnLife }) {
  const { question, cutOff, rates, rows } = view;
  const order = usualOrder([rows]);
  const groups = sortedGroups(rates.groups, order);
  const judged = groups.filter(canBeJudged);
  return (
    <section className="stack" aria-labelledby="rows-title" id="rows">
      <h2 id="rows-title">Who has them</h2>
      <nav aria-label="Group the failures by" className="cluster no-print">
        {rowGroupings.map((grouping) => (
          <Link
            key={grouping}
            href={`/repeats/${question.component}${lifeQuery(question, cutOff, { rows: grouping })}#rows`}
            aria-current={grouping === rows || undefined}
          >
            By {dimensionNames[grouping].toLowerCase()}
          </Link>
        ))}
      </nav>
      {groups.length === 1 && <p>{onlyOne(rows, groups.map(nameOf)[0] ?? "")}</p>}
      {groups.length > 1 && judged.length === 0 && (
        <p>{formatCounted(groups.length, "group")}, each with under 10 unit-years: too few to judge any of them.</p>
      )}
      {groups.length > 0 && (
        <RateResult
          groups={groups}
          rates={rates}
          address={rateAddress(rates.question, order, dayNumber(cutOff))}
          order={order}
        />
      )}
    </section>
  );
}

function onlyOne(rows: RowGrouping, name: string): string {
  return `Only one ${dimensionNames[rows].toLowerCase()} in this view, ${name}: there is nothing beside it.`;
}
