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
  if (/^[+-]?\d{1,3}([.,]\d{3})+$/.test(plain) && !/^[+-]?0[.,]/.test(plain)) return thousands(plain);
  const number = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/.test(plain) ? Number(plain.replace(",", ".")) : Number.NaN;
  if (Number.isFinite(number)) return { kind: "value", value: number };
  return {
    kind: "unclear",
    sentence: `“${text.trim()}” is not a number. Type digits, with a point or a comma for the decimals.`,
  };
}

/** 1,234 may be a thousand or one and a bit: with one separator a comma or point is taken for decimals, and echoed; with more it is a thousand. */
function thousands(plain: string): TypedValue {
  const separators = plain.match(/[.,]/g) ?? [];
  if (separators.length === 1) return { kind: "value", value: Number(plain.replace(",", ".")) };
  if (new Set(separators).size === 1) return { kind: "value", value: Number(plain.replace(/[.,]/g, "")) };
  const last = Math.max(plain.lastIndexOf("."), plain.lastIndexOf(","));
  const whole = plain.slice(0, last).replace(/[.,]/g, "");
  return { kind: "value", value: Number(`${whole}.${plain.slice(last + 1)}`) };
}
