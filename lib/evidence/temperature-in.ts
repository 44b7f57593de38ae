/** The temperature that a condition such as "at 30 °C" or "75 F, first family" names, in degrees Celsius. */
export function temperatureIn(condition: string | undefined): number | undefined {
  const found = condition?.match(/(-?\d+(?:\.\d+)?)\s*°?\s*([CF])\b/);
  if (found === null || found === undefined) return undefined;
  const value = Number(found[1]);
  return found[2] === "F" ? ((value - 32) * 5) / 9 : value;
}
