/** As much of a text as a sentence about it has room for. */
export function shortened(text: string, most = 60): string {
  return text.length <= most ? text : `${text.slice(0, most)}…`;
}
