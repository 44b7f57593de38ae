import type { ReactNode } from "react";

import styles from "./task-list.module.css";

/** Rows of `TaskRow`, in any order that the work allows. */
export function TaskList({ children }: { readonly children: ReactNode }) {
  return <ul className={styles.list}>{children}</ul>;
}
