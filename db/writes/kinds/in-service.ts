/** SQL for the value of a column of a unit. */
type ColumnOf = (column: string) => string;

/**
 * The day that put a unit in service: installed, else delivered, else sold, else the latest possible day of manufacture
 * plus the shop's grace, which is never later than its retirement.
 */
export function inServiceOn(of: ColumnOf): string {
  const grace = "make_interval(months => (select made_grace_months from shop))";
  return `coalesce(${of("installed_on")}, ${of("delivered_on")}, ${of("sold_on")}, case when ${of("made_until")} is not null
    then least((${of("made_until")} + ${grace})::date, ${of("retired_on")}) end)`;
}

/** Which date that is. Empty where there is none, as the day is. */
export function inServiceBasis(of: ColumnOf): string {
  return `case when ${of("installed_on")} is not null then 'installed' when ${of("delivered_on")} is not null then 'delivered'
    when ${of("sold_on")} is not null then 'sold' when ${inServiceOn(of)} is not null then 'made' end`;
}
