import type { Transaction } from "@/db/database-types";
import { rewriteStaged } from "../bulk/rewrite-staged";
import type { StagedFile } from "./staged-file";

/**
 * One fate for each row of somebody's own file. A row goes by its record: new, changed or same; a row whose record is
 * there already, but which brings a part line of it, goes with the record's first row.
 */
export async function settleRowFates(tx: Transaction, { kind, parts, rows }: StagedFile): Promise<void> {
  if (rows === undefined) return;
  const main = parts.find((part) => part.kind.kind === kind);
  const key = main?.kind.target.key.join(", ");
  const records =
    main === undefined
      ? "select null::integer as row, null::text as own, null::text as first where false"
      : `select row, fate as own, first_value(fate) over (partition by ${key} order by row) as first from ${main.staged.table} where fate is not null`;
  const others = parts
    .filter((part) => part !== main)
    .map(({ staged }) => `select row, fate from ${staged.table} where fate is not null`);
  const beside =
    others.length === 0 ? "select null::integer as row, null::text as fate where false" : others.join(" union all ");
  await rewriteStaged(tx, rows.table, {
    set: {
      fate: `case when s.reason is not null then 'refused' when s.problems is not null then 'held'
        when m.own in ('new', 'changed') then m.own
        when b.row is null or not b.differs then 'same'
        when m.row is null then case when b.adds then 'new' else 'changed' end
        when m.first = 'new' then 'new' else 'changed' end`,
    },
    joins: `left join (${records}) m on m.row = s.row
      left join (select row, bool_or(fate <> 'same') as differs, bool_or(fate = 'new') as adds from (${beside}) each group by row) b on b.row = s.row`,
  });
}
