import Link from "next/link";
import type { ClaimsTab } from "../read-claims-address";
import { claimsHref, claimsTabs } from "../read-claims-address";
import styles from "./claim-tabs.module.css";

export const tabNames: Readonly<Record<ClaimsTab, string>> = {
  unclaimed: "Not claimed yet",
  drafts: "Drafts",
  sent: "Sent",
  answered: "Answered, needs us",
  "short-paid": "Short-paid",
  settled: "Settled",
};

interface Props {
  readonly current: ClaimsTab;
  readonly counts: ReadonlyMap<ClaimsTab, number>;
}

/** The lists by whose move is next, each with its count. */
export function ClaimTabs({ current, counts }: Props) {
  return (
    <nav aria-label="Lists of claims" className="no-print">
      <ul className={styles.tabs}>
        {claimsTabs.map((tab) => (
          <li key={tab}>
            <Link href={claimsHref({ tab })} className={styles.tab} aria-current={tab === current ? "page" : undefined}>
              {tabNames[tab]} <span className="figures">{counts.get(tab) ?? 0}</span>
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
