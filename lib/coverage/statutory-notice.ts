import type { Day } from "@/lib/calendar/day";
import type { LastDay } from "@/lib/calendar/term";
import type { SourceMark } from "@/lib/domain/reading";

/** What stays true beside every decision. There is no case that says a customer has no rights. */
export interface StatutoryNotice {
  readonly kind: "maker_term_runs" | "maker_term_ended" | "maker_does_not_pay" | "maker_term_unknown";
  readonly sentence: string;
  /** Periods that local law may give; for information, never advice. */
  readonly periods: readonly StatutoryPeriod[];
}

export interface StatutoryPeriod {
  readonly rule: string;
  readonly name: string;
  readonly owedBy: "seller" | "maker";
  readonly state:
    | { readonly kind: "runs" | "ended"; readonly start: Day; readonly lastDay: LastDay; readonly decisiveOn: Day }
    | { readonly kind: "no_fixed_period"; readonly because: string }
    | { readonly kind: "start_unknown"; readonly missing: string };
  /** What its end means: often a burden of proof moves and the right remains. */
  readonly meaning: string;
  readonly cite: string;
  readonly mark: SourceMark;
}
