import { detached } from "../detached";

const mostRemembered = 20_000;
const longestRemembered = 100;

/** Cells of one column repeat, so each is read once; the memory is bounded, as a file may hold anything. */
export function remembering<Reading>(read: (text: string) => Reading): (text: string) => Reading {
  const readings = new Map<string, Reading>();
  return (text) => {
    const known = readings.get(text);
    if (known !== undefined) return known;
    if (text.length > longestRemembered) return read(text);
    if (readings.size >= mostRemembered) readings.clear();
    const kept = detached(text);
    const reading = read(kept);
    readings.set(kept, reading);
    return reading;
  };
}
