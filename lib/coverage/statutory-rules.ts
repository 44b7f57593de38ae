// Periods that local law gives beside any maker's terms. For information: local law and its courts decide.

import { type Day, day } from "@/lib/calendar/day";
import type { AnchorDay, CountedTerm } from "@/lib/calendar/term";
import type { SourceMark } from "@/lib/domain/reading";

export interface StatutoryRule {
  readonly key: string;
  readonly name: string;
  /** ISO 3166 codes it holds in; GB takes in GB-SCT. */
  readonly territories: readonly string[];
  readonly owedBy: "seller" | "maker";
  readonly period: StatutoryTerm | { readonly kind: "no_fixed_period"; readonly because: string };
  readonly meaning: string;
  readonly cite: string;
  readonly mark: SourceMark;
}

export interface StatutoryTerm {
  readonly kind: "term";
  readonly from: "delivery" | "day_after_last_step";
  readonly term: CountedTerm;
  readonly anchorDay: AnchorDay;
  /** Added once where the customer chose repair, for repairs completed from that day on. */
  readonly afterRepair: { readonly adds: CountedTerm; readonly from: Day } | undefined;
}

const europeanUnion = "AT BE BG HR CY CZ DK EE FI FR DE GR HU IE IT LV LT LU MT NL PL PT RO SK SI ES SE".split(" ");

export const statutoryRules: readonly StatutoryRule[] = [
  {
    key: "eu_conformity",
    name: "Seller's liability for lack of conformity",
    territories: europeanUnion,
    owedBy: "seller",
    period: {
      kind: "term",
      from: "delivery",
      term: { n: 2, unit: "year" },
      anchorDay: "exclude",
      afterRepair: { adds: { n: 12, unit: "month" }, from: day("2026-07-31") },
    },
    meaning: "The seller answers for a defect that shows in this time; national law may give more.",
    cite: "Directive (EU) 2019/771 art. 10, as amended by Directive (EU) 2024/1799",
    mark: "law",
  },
  {
    key: "eu_presumption",
    name: "Defect presumed to have been there at delivery",
    territories: europeanUnion,
    owedBy: "seller",
    period: {
      kind: "term",
      from: "delivery",
      term: { n: 1, unit: "year" },
      anchorDay: "exclude",
      afterRepair: undefined,
    },
    meaning: "After it the presumption is gone and the right remains; some states presume for two years.",
    cite: "Directive (EU) 2019/771 art. 11",
    mark: "law",
  },
  {
    key: "uk_presumption",
    name: "Defect presumed to have been there at delivery",
    territories: ["GB"],
    owedBy: "seller",
    period: {
      kind: "term",
      from: "delivery",
      term: { n: 6, unit: "month" },
      anchorDay: "include",
      afterRepair: undefined,
    },
    meaning: "presumption gone, right remains; consumer must prove",
    cite: "Consumer Rights Act 2015 s. 19(14)-(15)",
    mark: "law",
  },
  {
    key: "uk_short_term_reject",
    name: "Short-term right to reject",
    territories: ["GB"],
    owedBy: "seller",
    period: {
      kind: "term",
      from: "day_after_last_step",
      term: { n: 30, unit: "day" },
      anchorDay: "include",
      afterRepair: undefined,
    },
    meaning: "After it repair or replacement comes first; a requested repair stops this clock.",
    cite: "Consumer Rights Act 2015 s. 22(3)-(8)",
    mark: "law",
  },
  {
    key: "au_acceptable_quality",
    name: "Consumer guarantee of acceptable quality",
    territories: ["AU"],
    owedBy: "seller",
    period: {
      kind: "no_fixed_period",
      because: "acceptable quality lasts a reasonable time; no statutory number of days",
    },
    meaning: "What is reasonable depends on the goods, the price and what was said about them.",
    cite: "Australian Consumer Law ss. 54, 58, 259, 271, 274",
    mark: "government",
  },
];
