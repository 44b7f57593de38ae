import type { DayNumber } from "@/lib/calendar/day-number";
import { lastCoveredDay } from "@/lib/calendar/term";
import { dayText } from "./day-text";
import { type ClassKey, componentClasses, type MakerTerms, makerPromises } from "./maker-terms";
import type { RegisterUnit } from "./register-unit";

/** Which pay items the maker owes for a failure of that component reported on that day, as the call desk would look it up. */
export interface MakerCover {
  readonly parts: boolean;
  readonly labour: boolean;
}

/** Only what the register shows is asked; a unit without any start day gets nothing until somebody finds the paper. */
export function makerCover(unit: RegisterUnit, component: string | undefined, reportedOn: DayNumber): MakerCover {
  const promise = makerPromises[unit.model.maker];
  const { soldOn, deliveredOn, installedOn } = unit.known;
  const starts = { purchase: soldOn, delivery: deliveredOn, installation: installedOn } as const;
  const event = promise.start.find((key) => key in starts && starts[key as keyof typeof starts] !== undefined); // checked by `in`
  const start = event === undefined ? undefined : starts[event as keyof typeof starts];
  if (start === undefined || unit.use === "commercial") return { parts: false, labour: false };
  const sold = dayText(soldOn ?? start);
  const version = promise.versions.findLast((candidate) => candidate.effectiveFrom <= sold);
  const years = version === undefined ? undefined : yearsOf(version, classOf(component));
  const whole = version?.wholeUnitYears ?? 0;
  const within = (count: number) =>
    count > 0 && dayText(reportedOn) <= lastCoveredDay(dayText(start), { n: count, unit: "year" }, promise.anchorDay);
  return { parts: within(Math.max(whole, years?.parts ?? 0)), labour: within(Math.max(whole, years?.labour ?? 0)) };
}

function classOf(component: string | undefined): ClassKey | undefined {
  for (const [key, members] of Object.entries(componentClasses)) {
    if ((members as readonly string[]).includes(component ?? "")) return key as ClassKey; // Object.entries loses the key type
  }
  return undefined;
}

function yearsOf(version: MakerTerms, key: ClassKey | undefined) {
  return key === undefined ? undefined : version.classYears[key];
}
