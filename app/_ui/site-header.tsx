import Link from "next/link";
import { AccountMenu } from "@/app/_people/account-menu";
import type { SignedIn } from "@/app/_people/load-signed-in";
import { may } from "@/lib/people/permissions";
import { Logo } from "./logo";
import { PlaceTabs } from "./place-tabs";
import { places } from "./places";
import styles from "./site-header.module.css";
import { ViewMenu } from "./view-menu";
import type { ViewSettings } from "./view-settings";

interface Props {
  readonly settings: ViewSettings;
  /** Nobody before signing in: then there are no places to go to. */
  readonly person: SignedIn | undefined;
}

/** The enamel strip that stands above every page. */
export function SiteHeader({ settings, person }: Props) {
  return (
    <header className={styles.strip}>
      <div className={styles.inner}>
        <Link href="/today" className={styles.name}>
          <Logo />
          Ohmsworth
        </Link>
        <PlaceTabs open={places.filter(({ act }) => person !== undefined && may(person.role, act))} />
        {person !== undefined && <AccountMenu person={person} />}
        <ViewMenu settings={settings} />
      </div>
    </header>
  );
}
