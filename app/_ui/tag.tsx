import Link from "next/link";
import styles from "./plate.module.css";

interface Props {
  /** A serial, part number or claim number, exactly as it was given. */
  readonly children: string;
  readonly href?: string | undefined;
}

/** A plate on a string: used for serials, part numbers and claim numbers only. */
export function Tag({ children, href }: Props) {
  return (
    <span className={styles.tag}>
      <span className={styles.eyelet} aria-hidden="true" />
      {href === undefined ? children : <Link href={href}>{children}</Link>}
    </span>
  );
}
