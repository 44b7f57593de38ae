import type { ReactNode } from "react";
import styles from "./button.module.css";

interface Props {
  readonly children: ReactNode;
  /** `main` for the one act a page is for; `plain` for the others. */
  readonly weight?: "main" | "plain";
  readonly type?: "submit" | "button";
  readonly name?: string;
  readonly value?: string;
  readonly disabled?: boolean;
  readonly onClick?: () => void;
}

export function Button({ children, weight = "main", type = "submit", ...rest }: Props) {
  return (
    <button {...rest} type={type} className={styles.button} data-weight={weight}>
      {children}
    </button>
  );
}
