/** Stands for "not settled" in a form, where a blank already means something; no word of ours looks like it. */
export const unsettled = "?";

/** Name of the field that says what a word means. */
export function wordField(target: string, word: string): string {
  return `word:${target}:${word}`;
}
