"use client";

import Link from "next/link";
import { usePathname } from "next/navigation";
import type { Place } from "./places";
import styles from "./site-header.module.css";

/** Reacts to the address only: which of the places that are open to the role is this? */
export function PlaceTabs({ open }: { readonly open: readonly Place[] }) {
  const pathname = usePathname();
  return (
    <nav aria-label="Places" className={styles.nav}>
      <ul className={styles.tabs}>
        {open.map(({ name, href }) => (
          <li key={href}>
            <Link href={href} className={styles.tab} aria-current={currentAs(pathname, href)}>
              {name}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}

/** "page" on the place itself, "true" on everything below it. */
function currentAs(pathname: string, href: string): "page" | "true" | undefined {
  if (pathname === href) return "page";
  return pathname.startsWith(`${href}/`) ? "true" : undefined;
}
