/**
 * One text for one value: keys sorted by their UTF-16 units, no spaces, numbers as JavaScript prints them. Equal content
 * gives equal bytes, so a hash of the text names the content.
 * @throws RangeError for what JSON cannot say: NaN, Infinity, undefined, and text with half a surrogate pair
 * Source: RFC 8785, JSON Canonicalization Scheme. Checked: tests/claims/neutral/canonical-json.test.ts, by its example.
 */
export function canonicalJson(value: unknown): string {
  return written(value, "value");
}

function written(value: unknown, place: string): string {
  if (value === null || typeof value === "boolean") return String(value);
  if (typeof value === "string") return quoted(value, place);
  if (typeof value === "number") {
    if (!Number.isFinite(value)) throw new RangeError(`${place}: no number for JSON: ${value}`);
    return JSON.stringify(value);
  }
  if (Array.isArray(value)) return `[${value.map((entry, index) => written(entry, `${place}[${index}]`)).join(",")}]`;
  if (typeof value !== "object") throw new RangeError(`${place}: JSON has no ${typeof value}`);
  // < compares UTF-16 units, which is what the scheme asks for.
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${entries.map(([key, entry]) => `${quoted(key, place)}:${written(entry, `${place}.${key}`)}`).join(",")}}`;
}

function quoted(text: string, place: string): string {
  if (/\p{Surrogate}/u.test(text)) throw new RangeError(`${place}: text with half a surrogate pair`);
  return JSON.stringify(text);
}
