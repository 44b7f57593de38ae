import Link from "next/link";
import { type Definition, DefinitionList } from "@/app/_ui/definition-list";
import type { CreditsOfPart } from "@/db/queries/part-credits";
import { monthWords } from "@/lib/figures/fan";
import { monthsBetween } from "@/lib/forecast/forecast-month";
import { formatCount, formatCounted } from "@/lib/format/format-count";
import { formatPlainDay } from "@/lib/format/format-day";
import { formatMoney } from "@/lib/format/format-money";
import { leadWords } from "../../line-words";
import type { KnownPart } from "../load-part";

/** Plate of the part, what its use rests on, and what drives it. */
export function PartBasis({ view: { part, older, credits } }: { readonly view: KnownPart }) {
  const items: Definition[] = [
    { term: "Part number", detail: part.partNumber },
    ...(older.length > 0 ? [{ term: "Took the place of", detail: older.join(", ") }] : []),
    {
      term: "Component",
      detail:
        part.component === undefined ? (
          "none on file"
        ) : (
          <Link href={`/repeats/${part.component}`}>{part.componentName ?? part.component}</Link>
        ),
      ...(part.component === undefined ? {} : { source: "when it fails, and which models drive it" }),
    },
    {
      term: "Cost of one",
      detail:
        part.unitCostCents === undefined
          ? "not known"
          : formatMoney({ cents: part.unitCostCents, currency: part.currency }),
    },
    { term: "Lead time", detail: leadWords(part.plan.lead) },
    {
      term: "Risk",
      detail: `short in 1 of ${part.plan.shortOneIn} waits at most`,
      ...(part.hasTerms ? {} : { source: "assumed; nobody said" }),
    },
    ...(part.terms?.supplier ? [{ term: "Supplier", detail: part.terms.supplier }] : []),
    ...(part.lastBuyOn === undefined ? [] : [{ term: "Last day to order", detail: formatPlainDay(part.lastBuyOn) }]),
    ...(credits.claims === 0 && credits.held === 0
      ? []
      : [
          {
            term: "Credits due",
            detail:
              credits.claims === 0
                ? "none"
                : `${formatMoney({ cents: credits.openCents, currency: part.currency })} on ${formatCounted(credits.claims, "claim")}`,
            ...(credits.held === 0 ? {} : { source: <HeldWords credits={credits} /> }),
          },
        ]),
    { term: "Last used", detail: part.lastUsedOn === undefined ? "never" : formatPlainDay(part.lastUsedOn) },
  ];
  return (
    <>
      <DefinitionList items={items} />
      <p>
        {formatCount(part.history.reduce((sum, count) => sum + count, 0))} pieces in{" "}
        {formatCounted(monthsBetween(part.historyFrom, part.forecastFrom), "whole month")} from{" "}
        {monthWords(part.historyFrom)} on; {formatCount(part.usedLastYear)} on {formatCounted(part.jobsLastYear, "job")}{" "}
        in the last 12.
        {part.spellings.length > 1 && ` Counted together: ${part.spellings.join(", ")}.`}
      </p>
      <p className="small soft">Data version {part.dataVersion.slice(0, 12)}</p>
    </>
  );
}

function HeldWords({ credits: { held, firstMayGoOn } }: { readonly credits: CreditsOfPart }) {
  return (
    <>
      <Link href="/claims/failed-parts">{formatCounted(held, "failed one has", "failed ones have")} to be kept</Link>
      {firstMayGoOn !== undefined && `, the first until ${formatPlainDay(firstMayGoOn)}`}
    </>
  );
}
