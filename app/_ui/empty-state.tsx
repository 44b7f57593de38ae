import type { ReactNode } from "react";
import styles from "./empty-state.module.css";

interface Props {
  /** Nothing was ever here; a filter took everything away; or all work is done. Three different pieces of news. */
  readonly kind: "never-used" | "filtered-away" | "nothing-due";
  readonly title: string;
  /** What to do next, or why it is empty. */
  readonly children?: ReactNode;
}

/** Where a list would be. Never for data that could not be fetched: that is a `Notice`. */
export function EmptyState({ kind, title, children }: Props) {
  return (
    <div className={styles.empty} data-kind={kind}>
      <p className={styles.title}>{title}</p>
      {children !== undefined && <div className="stack-tight">{children}</div>}
    </div>
  );
}
