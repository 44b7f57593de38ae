import { exactly } from "@/lib/calendar/day-range";
import type { LastDay } from "@/lib/calendar/term";
import { normalised } from "@/lib/domain/normalised";
import type { Campaign, SerialRange } from "@/lib/domain/policy-campaign";
import type { CoverWindow } from "./coverage-decision";
import type { CoverageFacts } from "./coverage-facts";

/** Whether the campaign names this unit and this component. Age plays no part. */
export function campaignCovers(campaign: Campaign, facts: CoverageFacts): boolean {
  if (facts.component !== campaign.component || facts.unit.serial === undefined) return false;
  return isSerialIn(facts.unit.serial, campaign.serials);
}

/** Serials compare letter by letter, without blanks and dashes, and only where they are equally long. */
export function isSerialIn(serial: string, ranges: readonly SerialRange[]): boolean {
  const plain = normalised(serial);
  return ranges.some((range) => {
    const from = normalised(range.from);
    return plain.length === from.length && plain >= from && plain <= normalised(range.to);
  });
}

export function campaignWindow(campaign: Campaign): CoverWindow {
  const on = campaign.startsOn === undefined ? undefined : exactly(campaign.startsOn);
  const end: LastDay = campaign.endsOn ?? "lifetime";
  const last = { earliest: end, latest: end };
  const start = on && {
    event: "campaign" as const,
    on,
    precision: "day" as const,
    seenIn: campaign.sourceDocument,
    isFallback: false,
    movedBy: undefined,
  };
  return { start, first: on, last, term: undefined, anchorDay: "exclude", ends: [] };
}
