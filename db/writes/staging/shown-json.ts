/** JSON that a column of the database can hold: without NUL and without half characters. */
export function shownJson(value: unknown): string {
  const text = JSON.stringify(value);
  if (!text.includes("\\u")) return text;
  return JSON.stringify(inHoldableText(value));
}

export function visible(text: string): string {
  return text.replaceAll("\0", "␀").replace(halfCharacter, "�");
}

const halfCharacter = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

function inHoldableText(value: unknown): unknown {
  if (typeof value === "string") return visible(value);
  if (Array.isArray(value)) return value.map(inHoldableText);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, inner]) => [visible(name), inHoldableText(inner)]));
}
