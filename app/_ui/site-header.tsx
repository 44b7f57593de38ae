import Link from "next/link";
import { Logo } from "./logo";
import { PlaceTabs } from "./place-tabs";
import styles from "./site-header.module.css";
import { ViewMenu } from "./view-menu";
import type { ViewSettings } from "./view-settings";

interface Props {
  readonly settings: ViewSettings;
}

/** The enamel strip that stands above every page. */
export function SiteHeader({ settings }: Props) {
  return (
    <header className={styles.strip}>
      <div className={styles.inner}>
        <Link href="/today" className={styles.name}>
          <Logo />
          Ohmsworth
        </Link>
        <PlaceTabs />
        <ViewMenu settings={settings} />
      </div>
    </header>
  );
}
