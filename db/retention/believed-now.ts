/**
 * The instant by which things are over their time. What is removed is gone for good, so a clock that is suddenly more than so
 * many days past the time before is not believed at once, but the next time: until then no more than those days have passed.
 * @param lastAt  when it was done before, ISO text; undefined where it never was
 */
export function believedNow(now: Date, lastAt: string | undefined, days: number): Date {
  const last = lastAt === undefined ? Number.NaN : Date.parse(lastAt);
  const latest = last + days * 86_400_000;
  return now.getTime() > latest ? new Date(latest) : now;
}
