import type { ReactNode } from "react";
import { classNames } from "./class-names";
import styles from "./page.module.css";

interface Props {
  /** One sentence that states the finding: "Three drain-pump groups fail clearly more often than the fleet." */
  readonly title: ReactNode;
  /** What this is based on: counts, days, definitions, last load. Every page has it. */
  readonly margin: ReactNode;
  /** Where this page hangs, such as a link back to its list. */
  readonly above?: ReactNode;
  /** Links and buttons that act on the whole page. */
  readonly actions?: ReactNode;
  /** For wide tables: the sheet takes the full width and the margin follows below it. */
  readonly wide?: boolean;
  readonly children: ReactNode;
}

/** The bench with one sheet on it and the margin beside it. */
export function Page({ title, margin, above, actions, wide = false, children }: Props) {
  return (
    <div className={classNames(styles.bench, wide && styles.wide)}>
      <main id="main" tabIndex={-1} className={styles.sheet}>
        {above !== undefined && <p className={classNames("small", styles.above)}>{above}</p>}
        <div className={styles.head}>
          <h1 className={styles.title}>{title}</h1>
          {actions !== undefined && <div className={classNames("cluster", "no-print")}>{actions}</div>}
        </div>
        <div className="stack">{children}</div>
      </main>
      <aside className={styles.margin} aria-labelledby="margin-title">
        <h2 id="margin-title" className={styles.marginTitle}>
          What this is based on
        </h2>
        <div className="stack">{margin}</div>
      </aside>
    </div>
  );
}
