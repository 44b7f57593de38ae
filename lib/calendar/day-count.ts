// Calendar days as whole numbers, so that a million decisions need no date objects. Proleptic Gregorian calendar.
// Checked: tests/calendar/day-count.test.ts, day by day and over 20,000 random sums against Temporal.PlainDate.

/** Year, month 1-12 and day of month as they stand in ISO text. */
export interface CivilDate {
  readonly year: number;
  readonly month: number;
  readonly dayOfMonth: number;
}

/** Days since 1 March of year 0, a count in which every leap day comes last in its year. */
export function dayCount({ year, month, dayOfMonth }: CivilDate): number {
  const marchYear = month > 2 ? year : year - 1;
  const monthFromMarch = month > 2 ? month - 3 : month + 9;
  const leapDays = Math.floor(marchYear / 4) - Math.floor(marchYear / 100) + Math.floor(marchYear / 400);
  return 365 * marchYear + leapDays + daysBeforeMonth(monthFromMarch) + dayOfMonth - 1;
}

/** The calendar day of a count: the other way round. */
export function civilDate(count: number): CivilDate {
  const era = Math.floor(count / daysIn400Years);
  const inEra = count - era * daysIn400Years;
  const century = Math.min(3, Math.floor(inEra / daysIn100Years));
  const inCentury = inEra - century * daysIn100Years;
  const cycle = Math.floor(inCentury / daysIn4Years);
  const inCycle = inCentury - cycle * daysIn4Years;
  const yearOfCycle = Math.min(3, Math.floor(inCycle / 365));
  const inYear = inCycle - 365 * yearOfCycle;
  const monthFromMarch = Math.floor((5 * inYear + 2) / 153);
  const isAfterNewYear = monthFromMarch > 9;
  return {
    year: 400 * era + 100 * century + 4 * cycle + yearOfCycle + (isAfterNewYear ? 1 : 0),
    month: isAfterNewYear ? monthFromMarch - 9 : monthFromMarch + 3,
    dayOfMonth: inYear - daysBeforeMonth(monthFromMarch) + 1,
  };
}

export function daysInMonth(year: number, month: number): number {
  if (month !== 2) return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
}

const daysIn4Years = 1461;
const daysIn100Years = 36_524;
const daysIn400Years = 146_097;

/** From March on, five months hold 153 days, over and over. */
function daysBeforeMonth(monthFromMarch: number): number {
  return Math.floor((153 * monthFromMarch + 2) / 5);
}
