/** A copy that does not hold on to the piece of the file that it was cut from. */
export function detached(text: string): string {
  return Buffer.from(text, "utf16le").toString("utf16le");
}
