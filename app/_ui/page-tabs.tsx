import Link from "next/link";
import type { ReactNode } from "react";
import styles from "./page-tabs.module.css";

interface PageTab {
  readonly key: string;
  readonly name: ReactNode;
  readonly href: string;
}

interface Props {
  /** What the row leads to, for those who do not see it. */
  readonly label: string;
  readonly tabs: readonly PageTab[];
  readonly current: string | undefined;
}

/** The pages of one place as a row of links, with a bar below the one that is open. */
export function PageTabs({ label, tabs, current }: Props) {
  return (
    <nav aria-label={label} className="no-print">
      <ul className={styles.tabs}>
        {tabs.map(({ key, name, href }) => (
          <li key={key}>
            <Link href={href} className={styles.tab} aria-current={key === current ? "page" : undefined}>
              {name}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
