import { type ReactNode, useId } from "react";
import { classNames } from "./class-names";
import styles from "./table.module.css";

export interface Column<Row> {
  readonly key: string;
  /** Plain text: it is repeated beside each cell where rows stack on a phone. */
  readonly head: string;
  /** Below the head, such as the axis of a column of marks. */
  readonly headNote?: ReactNode;
  readonly cell: (row: Row) => ReactNode;
  /** `number`: figures in one width, to the right. `mark`: a drawing on the head's axis. Text where absent. */
  readonly kind?: "text" | "number" | "mark";
  /** Address of the same page sorted by this column. */
  readonly sortHref?: string | undefined;
  readonly sorted?: "ascending" | "descending" | undefined;
  /** Left out where rows stack on a phone: keep the three columns that answer the page's question. */
  readonly wideOnly?: boolean;
}

interface Props<Row> {
  readonly caption: string;
  /** Said to screen readers only, where a heading above says the same. */
  readonly captionHidden?: boolean;
  /** The first column names the row. */
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly rowKey: (row: Row) => string;
  /** Rows that follow after a heavier line, such as the fleet or a total. */
  readonly closing?: readonly Row[];
  /** `scroll` keeps all columns on a phone and moves sideways under a fixed first column; `stack` where absent. */
  readonly narrow?: "stack" | "scroll";
}

/** A plain table: caption, scopes, sort links, figures aligned. */
export function Table<Row>(props: Props<Row>) {
  const { caption, captionHidden = false, columns, rows, rowKey, closing = [], narrow = "stack" } = props;
  const captionId = useId();
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls sideways must be reachable by keyboard
    <section className={styles.frame} aria-labelledby={captionId} tabIndex={0}>
      <table className={classNames(styles.table, narrow === "stack" && styles.stacks)}>
        <caption id={captionId} className={captionHidden ? "only-heard" : styles.caption}>
          {caption}
        </caption>
        <thead>
          <tr>
            {columns.map((column) => (
              <HeadCell key={column.key} column={column} />
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <BodyRow key={rowKey(row)} columns={columns} row={row} stacks={narrow === "stack"} />
          ))}
        </tbody>
        {closing.length > 0 && (
          <tfoot>
            {closing.map((row) => (
              <BodyRow key={rowKey(row)} columns={columns} row={row} stacks={narrow === "stack"} />
            ))}
          </tfoot>
        )}
      </table>
    </section>
  );
}

function HeadCell<Row>({ column }: { readonly column: Column<Row> }) {
  const { head, headNote, sortHref, sorted } = column;
  return (
    <th scope="col" className={cellClass(column)} aria-sort={sorted}>
      {sortHref === undefined ? (
        head
      ) : (
        <a href={sortHref}>
          {head}
          {sorted !== undefined && <span aria-hidden="true">{sorted === "ascending" ? " ↑" : " ↓"}</span>}
        </a>
      )}
      {headNote}
    </th>
  );
}

interface RowProps<Row> {
  readonly columns: readonly Column<Row>[];
  readonly row: Row;
  readonly stacks: boolean;
}

/**
 * A cell names its column only where the row may stack and the cell stays: every cell goes to the browser twice, as what is
 * shown and as what the page is made of, so that a long list pays for each attribute.
 */
function BodyRow<Row>({ columns, row, stacks }: RowProps<Row>) {
  return (
    <tr>
      {columns.map((column, index) =>
        index === 0 ? (
          <th key={column.key} scope="row" className={cellClass(column)}>
            {column.cell(row)}
          </th>
        ) : (
          <td
            key={column.key}
            className={cellClass(column)}
            data-head={stacks && column.wideOnly !== true ? column.head : undefined}
          >
            {column.cell(row)}
          </td>
        ),
      )}
    </tr>
  );
}

function cellClass<Row>({ kind = "text", wideOnly = false }: Column<Row>): string | undefined {
  return classNames(styles[kind], wideOnly && styles.wideOnly) || undefined;
}
