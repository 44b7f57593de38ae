// What is typed into a reading's field: a comma or a point for the decimals, as phones offer either.

export type TypedValue =
  | { readonly kind: "value"; readonly value: number }
  | { readonly kind: "empty" }
  | { readonly kind: "unclear"; readonly sentence: string };

export function typedValue(text: string): TypedValue {
  const plain = text
    .trim()
    .replace(/[\s\u00a0\u202f]/g, "")
    .replace(/^[−–]/, "-");
  if (plain === "" || plain === "-") return { kind: "empty" };
  const whole = plain.match(/^[+-]?\d{1,3}(?:[.,]\d{3})*(?:[.,]\d+)?$/);
  if (whole !== null && (plain.match(/[.,]/g) ?? []).length > 1) return grouped(plain);
  const number = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/.test(plain) ? Number(plain.replace(",", ".")) : Number.NaN;
  if (Number.isFinite(number)) return { kind: "value", value: number };
  return {
    kind: "unclear",
    sentence: `“${text.trim()}” is not a number. Type digits, with a point or a comma for the decimals.`,
  };
}

/** With one separator it is taken for decimals, and echoed; with several they part thousands, the last one decimals where it differs. */
function grouped(plain: string): TypedValue {
  const separators = plain.match(/[.,]/g) ?? [];
  if (new Set(separators).size === 1) return { kind: "value", value: Number(plain.replace(/[.,]/g, "")) };
  const last = Math.max(plain.lastIndexOf("."), plain.lastIndexOf(","));
  return { kind: "value", value: Number(`${plain.slice(0, last).replace(/[.,]/g, "")}.${plain.slice(last + 1)}`) };
}
