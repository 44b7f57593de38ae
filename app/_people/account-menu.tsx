import Link from "next/link";
import { signOut } from "@/app/_people/sign-out";
import styles from "@/app/_ui/view-menu.module.css";
import { roles } from "@/lib/people/role";
import type { SignedIn } from "./load-signed-in";

/** Who is signed in, their account, and the way out. A plain form: it works before any script has loaded. */
export function AccountMenu({ person }: { readonly person: SignedIn }) {
  return (
    <details className={styles.menu}>
      <summary className={styles.handle}>{person.name}</summary>
      <form action={signOut} className={styles.panel}>
        <p>
          {person.name}, {roles[person.role]}
        </p>
        <p>
          <Link href="/account">Your account</Link>
        </p>
        <button type="submit" className={styles.apply}>
          Sign out
        </button>
      </form>
    </details>
  );
}
