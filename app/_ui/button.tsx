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
  /** Sends the form although a field that must be filled is not. */
  readonly unchecked?: boolean;
  readonly onClick?: () => void;
}

export function Button({ children, weight = "main", type = "submit", unchecked, ...rest }: Props) {
  return (
    <button {...rest} type={type} formNoValidate={unchecked} className={styles.button} data-weight={weight}>
      {children}
    </button>
  );
}
