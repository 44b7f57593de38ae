/** The filters in force as a query string, with some of them changed or left out. */
export function jobsAddress(
  inForce: readonly { readonly name: string; readonly value: string }[],
  change: Readonly<Record<string, string | undefined>> = {},
): string {
  const search = new URLSearchParams(inForce.map(({ name, value }) => [name, value]));
  for (const [name, value] of Object.entries(change)) {
    if (value === undefined) search.delete(name);
    else search.set(name, value);
  }
  return search.toString();
}
