import { Field } from "@/app/_ui/field";

interface Props {
  readonly cells: Readonly<Record<string, string>>;
  readonly corrections: Readonly<Record<string, string>>;
  /** Columns with a problem, which come first. */
  readonly wrong: ReadonlySet<string>;
}

/** A field for each cell, as it was last written. */
export function RowCells({ cells, corrections, wrong }: Props) {
  const columns = [...new Set([...wrong, ...Object.keys(cells)])].filter((column) => column !== "");
  return columns.map((column) => {
    const raw = cells[column] ?? "";
    const now = corrections[column] ?? raw;
    return (
      <div key={column}>
        <input type="hidden" name={`was:${column}`} value={now} />
        <Field
          label={column}
          name={`cell:${column}`}
          value={now}
          autoComplete="off"
          {...(now !== raw && { hint: `The file says “${raw}”.` })}
        />
      </div>
    );
  });
}
