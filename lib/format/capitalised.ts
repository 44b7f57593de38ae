/** Words as the beginning of a sentence. */
export function capitalised(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
