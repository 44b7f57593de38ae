import type { StoredSignal } from "@/db/queries/signal-list";
import { dayFromNumber } from "@/lib/calendar/day-number";
import { productTypes } from "@/lib/domain/product-type";
import { capitalised } from "@/lib/format/capitalised";
import { formatDay } from "@/lib/format/format-day";
import { formatDecimal } from "@/lib/format/format-decimal";
import { outlookOf } from "@/lib/signals/outlook";
import type { CellKey } from "@/lib/signals/signal-record";
import { firstDayOf } from "@/lib/signals/weeks";
import { lowerFirst } from "./lower-first";

/** Level of the ranges on these pages. */
export const signalLevel = 0.95;

/** "Drain pump: Brackenhall BHF27-W3, made July to December 2023". */
export function signalName({ wordName, lead }: StoredSignal): string {
  return `${wordName}: ${cellWords(lead.key)}`;
}

/** The machines of a cell in words. */
export function cellWords({ maker, model, madeHalf, productType }: CellKey): string {
  const machines =
    model === undefined ? `${maker}, all ${lowerFirst(productTypes[productType])} models` : `${maker} ${model}`;
  return madeHalf === undefined ? machines : `${machines}, made ${halfWords(madeHalf)}`;
}

export function halfWords(half: number): string {
  const year = 1970 + Math.floor(half / 2);
  return half % 2 === 0 ? `January to June ${year}` : `July to December ${year}`;
}

export function onsetWords({ lead }: StoredSignal): string {
  return lead.onsetWeek <= firstFollowed(lead)
    ? "from the first week that could be judged"
    : `since ${formatDay(dayFromNumber(firstDayOf(lead.onsetWeek)))}`;
}

function firstFollowed({ firstWeek, weeklyExpected }: StoredSignal["lead"]): number {
  return (
    firstWeek +
    Math.max(
      0,
      weeklyExpected.findIndex((mean) => mean > 0),
    )
  );
}

export function outlookOfSignal({ lead }: StoredSignal) {
  return outlookOf({
    observed: lead.observed,
    expected: lead.expected,
    expectedAhead: lead.expectedAhead,
    level: signalLevel,
  });
}

/** "2.6 times (2.1 to 3.2)". */
export function ratioWords({
  point,
  low,
  high,
}: {
  readonly point: number;
  readonly low: number;
  readonly high: number;
}): string {
  return `${formatDecimal(point, 1)} times (${formatDecimal(low, 1)} to ${formatDecimal(high, 1)})`;
}

/** Whole numbers: halves of a failure mean nothing to anybody. */
export function extraWords({
  point,
  low,
  high,
}: {
  readonly point: number;
  readonly low: number;
  readonly high: number;
}): string {
  return `${whole(point)} (${whole(low)} to ${whole(high)})`;
}

function whole(value: number): string {
  return formatDecimal(Math.max(0, Math.round(value)), 0);
}

export function signalHref(key: string, as?: string): string {
  return `/repeats/signals/${encodeURIComponent(key)}${as === undefined ? "" : `?as=${as}`}`;
}

/** A file of a signal's page. */
export function signalFileHref(key: string, file: string, as?: string): string {
  return `/repeats/signals/${encodeURIComponent(key)}/${file}${as === undefined ? "" : `?as=${as}`}`;
}

/** The jobs since the onset, on the Jobs page; that page knows no half-year of production and no fault code, so it may hold more. */
export function jobsOfSignal({ lead, wordKind, word, onsetOn }: StoredSignal): string {
  const { maker, model, productType } = lead.key;
  const search = new URLSearchParams({ make: maker, type: productType, from: onsetOn });
  if (wordKind !== "fault_code") search.set(wordKind, word);
  if (model !== undefined) search.set("model", model);
  if (wordKind === "component") search.set("count", "failures");
  return `/jobs?${search.toString()}`;
}

/** "Drain pump: Brackenhall BHF27-W3", of a component that is known by its key alone. */
export function funnelName(key: CellKey): string {
  return `${capitalised(key.word.replaceAll("_", " "))}: ${cellWords(key)}`;
}
