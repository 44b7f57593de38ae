/** Each text draws apart from others, and always the same. FNV-1a, Fowler, Noll & Vo (1991). */
export function seedOf(text: string): number {
  let hash = 0x811c9dc5;
  for (const letter of text) hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 0x01000193) >>> 0;
  return hash;
}
