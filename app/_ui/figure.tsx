import type { ReactNode } from "react";
import styles from "./figure.module.css";

interface Props {
  /** The sentence that the drawing supports. */
  readonly takeaway: ReactNode;
  /** The drawing. */
  readonly children: ReactNode;
  /** The same data as a real table, which takes the drawing's place on demand. */
  readonly table: ReactNode;
  /** Address of the same data as CSV. */
  readonly csvHref: string;
  /** What the marks mean and what was left out, in small print under the drawing. */
  readonly note?: ReactNode;
}

/** A drawing with its sentence, its table and its file. */
export function Figure({ takeaway, children, table, csvHref, note }: Props) {
  return (
    <figure className={styles.figure}>
      <figcaption className={styles.takeaway}>{takeaway}</figcaption>
      <a href={csvHref} download className={styles.csv}>
        CSV
      </a>
      <div className={styles.body}>
        <div className={styles.drawing}>
          {children}
          {note !== undefined && <div className={`${styles.note} stack-tight`}>{note}</div>}
        </div>
        <details className={styles.twin}>
          <summary className={styles.handle}>Table</summary>
          <div className={styles.table}>{table}</div>
        </details>
      </div>
    </figure>
  );
}
