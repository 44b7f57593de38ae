import { PageTabs } from "@/app/_ui/page-tabs";
import type { ClaimsTab } from "../read-claims-address";
import { claimsHref, claimsTabs } from "../read-claims-address";

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
  const tabs = claimsTabs.map((tab) => ({
    key: tab,
    href: claimsHref({ tab }),
    name: (
      <>
        {tabNames[tab]} <span className="figures">{counts.get(tab) ?? 0}</span>
      </>
    ),
  }));
  return <PageTabs label="Lists of claims" tabs={tabs} current={current} />;
}
