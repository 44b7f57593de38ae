import type { PayItem } from "@/lib/domain/pay-item";
import type { Policy } from "@/lib/domain/policy";
import type { Campaign } from "@/lib/domain/policy-campaign";
import { campaignCovers, campaignWindow } from "./campaign-cover";
import type { CoverSource, CoverWindow, ItemDecision, NotCoveredReason, RuleLook } from "./coverage-decision";
import type { CoverageFacts } from "./coverage-facts";
import { decideWindow } from "./decide-item";
import { type ItemDecisions, sourceOf } from "./decide-policy";
import { speaksOf } from "./select-policies";

export interface CampaignOutcome {
  readonly source: CoverSource;
  readonly items: ItemDecisions;
  readonly look: RuleLook;
  /** Named unit and component; where not, it only explains why it does not help. */
  readonly isNamed: boolean;
}

/**
 * Each campaign of the policies against one job. The reported day is tested against its end; age plays no part, and so
 * neither does the version that governs the sale: a campaign stands in the newest version that names it.
 */
export function decideCampaigns(policies: readonly Policy[], facts: CoverageFacts): readonly CampaignOutcome[] {
  const newest = new Map<string, { readonly policy: Policy; readonly campaign: Campaign }>();
  for (const policy of policies) {
    if (policy.campaigns.length === 0 || !speaksOf(policy, facts)) continue;
    for (const campaign of policy.campaigns) {
      const key = `${policy.key}/${campaign.key}`;
      const known = newest.get(key);
      if (known === undefined || known.policy.version < policy.version) newest.set(key, { policy, campaign });
    }
  }
  return [...newest.values()].map(({ policy, campaign }) =>
    decideCampaign(campaign, sourceOf({ policy, contract: undefined }), facts),
  );
}

function decideCampaign(campaign: Campaign, policy: CoverSource, facts: CoverageFacts): CampaignOutcome {
  const source: CoverSource = { ...policy, payerKind: "campaign", campaign: campaign.key, campaignName: campaign.name };
  const window = campaignWindow(campaign);
  const isNamed = campaignCovers(campaign, facts);
  const paid = isNamed ? decideWindow(window, source, facts.reported) : notNamed(campaign, source, window, facts);
  const unpaid = refused(source, window, "item_not_paid");
  const decide = (item: PayItem) => (campaign.pays.includes(item) ? paid : unpaid);
  const isCovered = paid.verdict === "covered";
  return {
    source,
    items: {
      parts: decide("parts"),
      labour: decide("labour"),
      trip: decide("trip"),
      diagnosis: decide("diagnosis"),
    },
    isNamed,
    look: {
      step: "campaign",
      policy: policy.policy,
      item: undefined,
      outcome: isCovered ? "chosen" : "not_applicable",
      gave: campaign.key,
      window,
      deadline: campaign.endsOn,
    },
  };
}

/** A unit without a serial may still be one of those that the campaign names. */
function notNamed(campaign: Campaign, source: CoverSource, window: CoverWindow, facts: CoverageFacts): ItemDecision {
  const couldBe = facts.unit.serial === undefined && facts.component === campaign.component;
  if (!couldBe) return refused(source, window, "outside_campaign");
  return { verdict: "needs_evidence", reason: "serial_unknown", document: "plate_photo", by: source, window };
}

function refused(by: CoverSource, window: CoverWindow, reason: NotCoveredReason): ItemDecision {
  return { verdict: "not_covered", by, window, boundary: { kind: "none" }, reason };
}
