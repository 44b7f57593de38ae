import Link from "next/link";
import type { ReactNode } from "react";
import styles from "./button.module.css";

interface Props {
  readonly href: string;
  readonly children: ReactNode;
  readonly weight?: "main" | "plain";
  /** The address answers with a file. */
  readonly download?: boolean;
  /** The file holds what the page shows: the key `e` follows this link. */
  readonly isExport?: boolean;
}

/** A link that looks like the act it leads to. */
export function ButtonLink({ href, children, weight = "plain", download = false, isExport = false }: Props) {
  const shared = { className: styles.button, "data-weight": weight, "data-export": isExport || undefined };
  if (download || isExport) {
    return (
      <a href={href} download {...shared}>
        {children}
      </a>
    );
  }
  return (
    <Link href={href} {...shared}>
      {children}
    </Link>
  );
}
