/** What was typed, one to a line or between commas where that cannot be part of it; blanks left out, each once. */
export function linesOf(text: string): readonly string[] {
  return [
    ...new Set(
      text
        .split(/\r?\n/)
        .map((line) => line.trim())
        .filter((line) => line !== ""),
    ),
  ];
}
