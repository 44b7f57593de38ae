/** One value in COPY's text format; null is a missing value, an empty text is an empty text. */
export function copyField(value: string | number | bigint | boolean | null): string {
  if (value === null) return "\\N";
  if (typeof value !== "string") return String(value);
  if (!special.test(value)) return value;
  if (value.includes("\0")) throw new RangeError("copyField: PostgreSQL stores no text with a NUL character in it");
  return value.replace(/[\\\t\n\r]/g, (character) => escapes[character] ?? character);
}

/** Few texts have any of these, and to look for them costs less than to replace them. */
const special = /[\0\\\t\n\r]/;

const escapes: Readonly<Record<string, string>> = { "\\": "\\\\", "\t": "\\t", "\n": "\\n", "\r": "\\r" };
