import type { Definition } from "@/app/_ui/definition-list";
import type { Shop } from "@/db/queries/shop";
import { formatCounted } from "@/lib/format/format-count";
import { formatDay } from "@/lib/format/format-day";

/** The shop's settings and what each of them decides. */
export function shopFacts(shop: Shop): readonly Definition[] {
  return [
    { term: "Money", detail: shop.currency, source: "Amounts are whole cents of this currency." },
    { term: "Days", detail: shop.timeZone, source: "A day begins and ends at midnight in this zone." },
    { term: "Territory", detail: shop.territory, source: "Where cover has to hold." },
    {
      term: "Records from",
      detail: shop.recordsFrom === null ? "always complete" : formatDay(shop.recordsFrom),
      source: "Failures before this day were not recorded, so units are watched from it on.",
    },
    {
      term: "Grace after manufacture",
      detail: formatCounted(shop.madeGraceMonths, "month"),
      source: "Time in stock, for units known only by the day they were made.",
    },
    ...(shop.demo ? [{ term: "Data", detail: "Invented, for trying out" }] : []),
  ];
}
