// Troubles that come on top of the lives: they add events of their own and leave everything else as it was drawn.
import type { DayNumber } from "@/lib/calendar/day-number";
import type { CallRate } from "./call-rates";
import { numberOfDay } from "./day-text";
import { modelNumber, modelOf } from "./models";
import { weekNumber, weekStart } from "./production-week";

/** Extra events of one model, as many by an age as (age / scaleDays)^shape in each unit concerned. */
export interface AddedTrouble {
  readonly key: string;
  readonly model: string;
  readonly modelNumber: string;
  /** The component that fails, or the call that is made although no component is found. */
  readonly what:
    | { readonly kind: "failure"; readonly component: string }
    | { readonly kind: "call"; readonly rate: CallRate };
  /** First and last production week concerned, as running numbers; both undefined where all are. */
  readonly fromWeek: number | undefined;
  readonly toWeek: number | undefined;
  /** Calendar day from which it happens; undefined from the first. */
  readonly startsOn: DayNumber | undefined;
  readonly shape: number;
  readonly scaleDays: number;
  readonly story: string;
}

export const addedTroubles: readonly AddedTrouble[] = [
  {
    ...of("lock_fortnight", "BHF27"),
    what: { kind: "failure", component: "door_lock" },
    fromWeek: weekNumber(weekStart({ year: 2024, week: 33 })),
    toWeek: weekNumber(weekStart({ year: 2024, week: 34 })),
    startsOn: undefined,
    shape: 1,
    scaleDays: 190,
    story: "one fortnight's door locks with a contact that burns off",
  },
  {
    ...of("clutch_wear", "DST50"),
    what: { kind: "failure", component: "gearcase_or_clutch" },
    fromWeek: undefined,
    toWeek: undefined,
    startsOn: undefined,
    shape: 4,
    scaleDays: 4600,
    story: "a clutch lining that wears through from the fifth year on",
  },
  {
    ...of("switch_design", "BHD61"),
    what: { kind: "failure", component: "door_switch" },
    fromWeek: undefined,
    toWeek: undefined,
    startsOn: undefined,
    shape: 1,
    scaleDays: 12_000,
    story: "a door switch mounted where lint collects, in every unit of the model",
  },
  {
    ...of("noise_unexplained", "DSR18"),
    what: {
      kind: "call",
      rate: { cause: "not_determined", symptom: "noisy", per100UnitYears: 0, early: 1 },
    },
    fromWeek: undefined,
    toWeek: undefined,
    startsOn: numberOfDay("2025-03-03"),
    shape: 1,
    scaleDays: 9000,
    story: "a noise that nobody finds the cause of",
  },
];

/** A cell that looks worse every year although its units only grow old: no signal may point at it. */
export const decoy = {
  model: "BHT12",
  modelNumber: modelNumber(modelOf("BHT12")),
  component: "suspension_rods",
} as const;

/** Whether units made in that week have the trouble. */
export function concerns({ fromWeek, toWeek }: AddedTrouble, madeInWeek: number | undefined): boolean {
  if (fromWeek === undefined || toWeek === undefined) return true;
  return madeInWeek !== undefined && madeInWeek >= fromWeek && madeInWeek <= toWeek;
}

/** Events expected in one unit between two days, both of them days of service. */
export function addedBetween(
  { shape, scaleDays, startsOn }: AddedTrouble,
  inServiceOn: DayNumber,
  from: DayNumber,
  to: DayNumber,
): number {
  const upTo = (on: DayNumber) => (Math.max(0, Math.max(on, startsOn ?? on) - inServiceOn) / scaleDays) ** shape;
  return Math.max(0, upTo(to) - upTo(from));
}

function of(key: string, model: string): Pick<AddedTrouble, "key" | "model" | "modelNumber"> {
  return { key, model, modelNumber: modelNumber(modelOf(model)) };
}
