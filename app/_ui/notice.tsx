import type { ReactNode } from "react";
import styles from "./notice.module.css";
import { type Status, StatusShape, statuses } from "./status-word";

interface Props {
  readonly status: Status;
  /** What happened, in a few words. */
  readonly title: string;
  /** What it means and what to do. */
  readonly children?: ReactNode;
}

/** A message that belongs to the page, not to a field. */
export function Notice({ status, title, children }: Props) {
  return (
    <section className={styles.notice} data-status={status} aria-label={`${statuses[status].word}: ${title}`}>
      <StatusShape status={status} />
      <div className="stack-tight">
        <p className={styles.title}>{title}</p>
        {children !== undefined && <div className="stack-tight">{children}</div>}
      </div>
    </section>
  );
}
