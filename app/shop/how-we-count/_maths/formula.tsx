import { createElement, type ReactNode } from "react";
import styles from "./formula.module.css";

/** One formula on a line of its own. */
export function Formula({ children }: { readonly children: ReactNode }) {
  return (
    <div className={styles.frame}>{createElement("math", { display: "block", className: styles.maths }, children)}</div>
  );
}
