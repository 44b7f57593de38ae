import type { PayerKind } from "@/lib/domain/job";
import { makerCover } from "./cover-check";
import { happens, pickWeighted } from "./draws";
import { pumpCampaign } from "./pump-campaign";
import type { Random } from "./random";
import type { RegisterUnit } from "./register-unit";
import type { JobPlan } from "./unit-jobs";

export interface FiledPayer {
  readonly payer: PayerKind;
  /** Whether the maker's terms, as the register shows their start, pay parts or labour of this repair. */
  readonly covered: boolean;
}

/** Share of covered repairs that the call desk billed to the customer: a leak that the demo plants. */
const billedThoughCovered = 0.1;

export function drawPayer(random: Random, unit: RegisterUnit, job: JobPlan): FiledPayer {
  const { event } = job;
  const component = event.kind === "failure" ? event.component : event.rate.component;
  const cover = makerCover(unit, component, job.requestedOn);
  const covered = cover.parts || cover.labour;
  if (job.returnsTo !== undefined) return { payer: "own_guarantee", covered: false };
  if (event.kind === "call") {
    const warranty = cover.labour && happens(random, 0.55);
    return { payer: warranty ? "maker" : afterCover(random, unit), covered: false };
  }
  if (event.planted && unit.model.key === pumpCampaign.model && job.requestedOn >= pumpCampaign.startsOnNumber) {
    return { payer: "campaign", covered: true };
  }
  if (!covered) return { payer: afterCover(random, unit), covered };
  return { payer: happens(random, billedThoughCovered) ? "customer" : "maker", covered };
}

function afterCover(random: Random, unit: RegisterUnit): PayerKind {
  if (unit.hasContract && happens(random, 0.85)) return "contract";
  const kinds = ["customer", "goodwill", "dealer"] as const;
  return kinds[pickWeighted(random, [96, 2, 2])] ?? "customer";
}
