import Link from "next/link";
import type { ReactNode } from "react";
import { Button } from "./button";
import styles from "./field.module.css";

interface Props {
  /** Path of the page itself. The form is sent by GET, so the address is the saved filter. */
  readonly action: string;
  /** The filter in force, in words: "Dishwashers, drain pump, last 12 months — 96 jobs". */
  readonly words: ReactNode;
  /** Open at first, such as on a page that needs a choice. */
  readonly open?: boolean;
  /** Address without any filter; absent where none is set. */
  readonly clearHref?: string | undefined;
  readonly submit?: string;
  readonly children: ReactNode;
}

/** One line that says what is shown; behind it the fields that change it. */
export function FilterForm({ action, words, open = false, clearHref, submit = "Show these", children }: Props) {
  return (
    <details className={`${styles.filter} no-print`} open={open}>
      <summary className={styles.words}>{words}</summary>
      <form action={action} method="get" className={styles.form}>
        <div className={styles.fields}>{children}</div>
        <div className="cluster">
          <Button>{submit}</Button>
          {clearHref !== undefined && <Link href={clearHref}>Show all</Link>}
        </div>
      </form>
    </details>
  );
}
