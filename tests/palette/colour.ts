/** Red, green and blue in 0..1, gamma-encoded as in a stylesheet or linear in light. */
export type Triple = readonly [number, number, number];

export function fromHex(hex: string): Triple {
  const channel = (at: number) => Number.parseInt(hex.slice(at, at + 2), 16) / 255;
  return [channel(1), channel(3), channel(5)];
}

/** Gamma removed. Source: IEC 61966-2-1 (sRGB). */
export function toLinear([r, g, b]: Triple): Triple {
  const one = (c: number) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
  return [one(r), one(g), one(b)];
}

/** Contrast ratio, 1 to 21. Source: Web Content Accessibility Guidelines 2.2, definition of contrast ratio. */
export function contrast(a: Triple, b: Triple): number {
  const luminance = (colour: Triple) => dot(toLinear(colour), [0.2126, 0.7152, 0.0722]);
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return ((high ?? 0) + 0.05) / ((low ?? 0) + 0.05);
}

/** What `color-mix(in srgb, over share, under)` gives. */
export function mix(over: Triple, under: Triple, share: number): Triple {
  const one = (at: 0 | 1 | 2) => over[at] * share + under[at] * (1 - share);
  return [one(0), one(1), one(2)];
}

/**
 * Colour vision without the long-, middle- or short-wave cones, on linear light, at full severity.
 * Source: Machado, Oliveira and Fernandes (2009), IEEE TVCG 15, 1291-1298; matrices from memory of its table.
 */
export const visions = {
  normal: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protan: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deutan: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritan: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
} as const satisfies Record<string, readonly [Triple, Triple, Triple]>;
export type Vision = keyof typeof visions;

/** CIE L*a*b* of a stylesheet colour as that vision sees it; sRGB primaries, white D65. */
export function labAsSeen(hex: string, vision: Vision): Triple {
  const light = times(visions[vision], toLinear(fromHex(hex))).map((c) => Math.min(1, Math.max(0, c)));
  const [x, y, z] = times(toXyz, [light[0] ?? 0, light[1] ?? 0, light[2] ?? 0]);
  const [fx, fy, fz] = [root(x / 0.95047), root(y), root(z / 1.08883)];
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)];
}

const toXyz = [
  [0.4124564, 0.3575761, 0.1804375],
  [0.2126729, 0.7151522, 0.072175],
  [0.0193339, 0.119192, 0.9503041],
] as const satisfies readonly [Triple, Triple, Triple];

function root(t: number): number {
  return t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116;
}

function times(matrix: readonly [Triple, Triple, Triple], v: Triple): Triple {
  return [dot(matrix[0], v), dot(matrix[1], v), dot(matrix[2], v)];
}

function dot(a: Triple, b: Triple): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}
