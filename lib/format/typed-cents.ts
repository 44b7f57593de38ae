/**
 * An amount as people type it, in cents: 65, 65.5, 1,234.50, 65,00. Undefined for anything else.
 * @param mostDigits  before the decimal mark
 */
export function typedCents(text: string, mostDigits: number): number | undefined {
  const plain = text.replaceAll(/[\s,](?=\d{3}(\D|$))/g, "").replace(",", ".");
  const [, units, part = ""] = plain.match(/^(\d+)(?:\.(\d{1,2}))?$/) ?? [];
  if (units === undefined || units.length > mostDigits) return undefined;
  return Number(units) * 100 + Number(part.padEnd(2, "0"));
}
