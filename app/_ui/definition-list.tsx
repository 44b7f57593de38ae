import type { ReactNode } from "react";
import styles from "./definition-list.module.css";

export interface Definition {
  readonly term: string;
  readonly detail: ReactNode;
  /** Where the fact comes from and how sure it is, such as "receipt photo" or "common practice, no source". */
  readonly source?: ReactNode;
}

interface Props {
  readonly items: readonly Definition[];
}

/** Facts with their names, as on a rating plate. */
export function DefinitionList({ items }: Props) {
  return (
    <dl className={styles.list}>
      {items.map(({ term, detail, source }) => (
        <div key={term} className={styles.pair}>
          <dt className={styles.term}>{term}</dt>
          <dd className={styles.detail}>
            {detail}
            {source !== undefined && <span className={styles.source}>{source}</span>}
          </dd>
        </div>
      ))}
    </dl>
  );
}
