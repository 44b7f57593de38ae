/** Middle of the days on which unit `u` may have been made. */
export const madeOn = "(u.made_from + (u.made_until - u.made_from) / 2)";

/** Longest span of days that still tells the half-year: a quarter. */
const halfSpan = 92;

/** Half-year of production of unit `u`, as `halfOfDay` numbers it; unknown over a longer span. */
export const madeHalf = `case when u.made_until - u.made_from <= ${halfSpan} then
  2 * (extract(year from ${madeOn})::int - 1970) + case when extract(month from ${madeOn}) > 6 then 1 else 0 end end`;

/**
 * Each unit with the first day on which its failures would be on record: in service, the company's records complete,
 * and its own. A placeholder whose job has joined its real unit is no unit any more. Null on a unit without exposure, with the reason.
 * @param which  a condition on `u`
 */
export function placedUnits(which: string): string {
  return `(select u.unit_id, u.model_id, ${madeHalf} as made_half, u.in_service_on, o.observed_from, u.retired_on, o.reason
    from units u left join shop on true
    cross join lateral (select greatest(u.in_service_on, shop.records_from, u.recorded_from) as day) d
    cross join lateral (select case when not u.in_register then 'not_in_register' when u.in_service_on is null then 'no_in_service_day'
      when u.retired_on < d.day then 'never_observed' end) r(reason)
    cross join lateral (select case when r.reason is null then d.day end, r.reason) o(observed_from, reason)
    where ${which} and (u.identified or exists (select from jobs j where j.unit_id = u.unit_id)))`;
}
