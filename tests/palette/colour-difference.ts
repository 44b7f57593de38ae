import type { Triple } from "./colour";

/**
 * How different two L*a*b* colours look (CIEDE2000).
 * Source: Sharma, Wu and Dalal (2005), Color Research and Application 30, 21-30.
 */
export function colourDifference([l1, a1, b1]: Triple, [l2, a2, b2]: Triple): number {
  const meanChroma = (Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2;
  const stretch = 1 + 0.5 * (1 - Math.sqrt(meanChroma ** 7 / (meanChroma ** 7 + 25 ** 7)));
  const c1 = Math.hypot(stretch * a1, b1);
  const c2 = Math.hypot(stretch * a2, b2);
  const h1 = hue(stretch * a1, b1);
  const h2 = hue(stretch * a2, b2);
  const grey = c1 * c2 === 0;

  const dL = l2 - l1;
  const dC = c2 - c1;
  const dH = 2 * Math.sqrt(c1 * c2) * sin((grey ? 0 : turned(h2 - h1)) / 2);
  const l = (l1 + l2) / 2;
  const c = (c1 + c2) / 2;
  const h = grey ? h1 + h2 : meanHue(h1, h2);

  const t = 1 - 0.17 * cos(h - 30) + 0.24 * cos(2 * h) + 0.32 * cos(3 * h + 6) - 0.2 * cos(4 * h - 63);
  const sL = 1 + (0.015 * (l - 50) ** 2) / Math.sqrt(20 + (l - 50) ** 2);
  const sC = 1 + 0.045 * c;
  const sH = 1 + 0.015 * c * t;
  const turn = 30 * Math.exp(-(((h - 275) / 25) ** 2));
  const rT = -2 * Math.sqrt(c ** 7 / (c ** 7 + 25 ** 7)) * sin(2 * turn);
  return Math.sqrt((dL / sL) ** 2 + (dC / sC) ** 2 + (dH / sH) ** 2 + rT * (dC / sC) * (dH / sH));
}

const radians = Math.PI / 180;
const sin = (degrees: number) => Math.sin(degrees * radians);
const cos = (degrees: number) => Math.cos(degrees * radians);

function hue(a: number, b: number): number {
  return (Math.atan2(b, a) / radians + 360) % 360;
}

/** The shorter way round, -180 to 180. */
function turned(difference: number): number {
  if (difference > 180) return difference - 360;
  return difference < -180 ? difference + 360 : difference;
}

function meanHue(h1: number, h2: number): number {
  const mean = (h1 + h2) / 2;
  if (Math.abs(h1 - h2) <= 180) return mean;
  return h1 + h2 < 360 ? mean + 180 : mean - 180;
}
