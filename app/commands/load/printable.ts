/** Cells are shown as they stand, but must not steer the terminal. */
export function printable(text: string): string {
  return text.replace(/\p{Cc}/gu, " ");
}
