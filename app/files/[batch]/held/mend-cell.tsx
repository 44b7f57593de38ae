import Link from "next/link";
import { Button } from "@/app/_ui/button";
import { Field } from "@/app/_ui/field";
import fieldStyles from "@/app/_ui/field.module.css";
import type { AlikeProblems } from "../../_components/alike-problems";
import { leaveOut } from "./actions";
import { MendForm } from "./mend-form";

interface Props {
  readonly batch: number;
  readonly group: AlikeProblems;
}

const mostLinked = 12;

/** Corrects the cell on all rows that are wrong alike; leads to each row by itself; or leaves them out. */
export function MendCell({ batch, group }: Props) {
  const { column, value, problem, rows } = group;
  return (
    <div className="stack-tight">
      {column !== "" && (
        <MendForm words={rows.length === 1 ? "See what happens" : `See what happens to all ${rows.length}`}>
          <input type="hidden" name="batch" value={batch} />
          <input type="hidden" name="column" value={column} />
          <input type="hidden" name="value" value={value} />
          <input type="hidden" name="problem" value={problem} />
          <input
            name="text"
            aria-label={`${column} in row ${rows[0]} is to be`}
            defaultValue={value}
            className={fieldStyles.input}
          />
        </MendForm>
      )}
      <p className="small">
        {rows.slice(0, mostLinked).map((row, index) => (
          <span key={row}>
            {index > 0 && " · "}
            <Link href={`/files/${batch}/held/${row}`}>Row {row}</Link>
          </span>
        ))}
      </p>
      <LeaveOut batch={batch} rows={rows} />
    </div>
  );
}

/** Says that rows are not to come in, with the reason that stays with them. */
export function LeaveOut({ batch, rows }: { readonly batch: number; readonly rows: readonly number[] }) {
  return (
    <details>
      <summary className="small">Leave out</summary>
      <form action={leaveOut} className="stack-tight">
        <input type="hidden" name="batch" value={batch} />
        <input type="hidden" name="rows" value={rows.join(",")} />
        <Field label="Why" name="reason" required />
        <Button weight="plain">
          {rows.length === 1 ? `Leave row ${rows[0]} out` : `Leave all ${rows.length} out`}
        </Button>
      </form>
    </details>
  );
}
