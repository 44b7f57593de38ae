import type { ReactNode } from "react";
import { classNames } from "./class-names";
import styles from "./plate.module.css";

interface Props {
  /** Heading of the plate; a plate without one is a bare frame. */
  readonly title?: ReactNode;
  readonly children: ReactNode;
}

/** Facts stand on plates: one clipped corner, one hairline, no shadow. */
export function Plate({ title, children }: Props) {
  return (
    <section className={styles.plate}>
      {title !== undefined && <h2 className={styles.title}>{title}</h2>}
      <div className={classNames("stack-tight", styles.content)}>{children}</div>
    </section>
  );
}
