import { todayIn } from "@/app/_clock/today";
import type { Reader } from "@/db/database-types";
import { loadOpenSignals, type OpenSignal } from "@/db/queries/open-signals";
import { loadPartCatalogue } from "@/db/queries/part-catalogue";
import { type CreditsOfPart, loadCreditsOfPart } from "@/db/queries/part-credits";
import { loadOutlookState, type OutlookState } from "@/db/queries/part-list";
import { loadPartPage, type PartPage } from "@/db/queries/part-page";
import { loadShop } from "@/db/queries/shop";
import { loadTechnicians } from "@/db/queries/stock-places";
import { addDays, type Day } from "@/lib/calendar/day";
import { normalised } from "@/lib/domain/normalised";
import { partFamilies } from "@/lib/forecast/part-families";

export type PartView =
  | { readonly kind: "unknown"; readonly partNumber: string }
  /** Its use is counted under the number that took its place. */
  | { readonly kind: "superseded"; readonly partNumber: string; readonly by: string; readonly byKey: string }
  | KnownPart;

export interface KnownPart {
  readonly kind: "part";
  readonly today: Day;
  readonly part: PartPage;
  readonly state: OutlookState;
  /** Numbers that this one took the place of, as people write them. */
  readonly older: readonly string[];
  readonly technicians: readonly string[];
  /** Open signals on its component, in machines that take it. */
  readonly signals: readonly OpenSignal[];
  readonly credits: CreditsOfPart;
}

/** One part by any spelling of its number. */
export async function loadPart(db: Reader, asked: string): Promise<PartView> {
  const key = normalised(asked);
  const today = todayIn((await loadShop(db)).timeZone);
  const catalogue = await loadPartCatalogue(db, today, [key]);
  const { currentOf, links } = partFamilies(catalogue.links, catalogue.nameOf);
  const current = currentOf(key);
  if (current !== key)
    return { kind: "superseded", partNumber: catalogue.nameOf(key), by: catalogue.nameOf(current), byKey: current };
  const olderKeys = [...new Set(links.map(({ from }) => from))].filter((from) => currentOf(from) === key);
  const part = await loadPartPage(db, key, olderKeys);
  if (part === undefined) return { kind: "unknown", partNumber: catalogue.entries.get(key)?.partNumber ?? asked };
  return {
    kind: "part",
    today,
    part,
    state: await loadOutlookState(db),
    older: olderKeys.map(catalogue.nameOf),
    technicians: await loadTechnicians(db, addDays(today, -365)),
    signals: await signalsOf(db, part),
    credits: await loadCreditsOfPart(db, part.spellings, today),
  };
}

async function signalsOf(db: Reader, { component, outlook }: PartPage): Promise<readonly OpenSignal[]> {
  if (component === undefined) return [];
  const maker = outlook.kind === "forecast" && outlook.fleet?.kind === "fleet" ? outlook.fleet.maker : undefined;
  return (await loadOpenSignals(db, component)).filter((signal) => maker === undefined || signal.maker === maker);
}
