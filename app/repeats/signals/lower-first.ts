/** A name inside a sentence: "Front-load washer" becomes "front-load washer". */
export function lowerFirst(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}
