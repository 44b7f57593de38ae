/**
 * Zero of a continuous function between two points where its signs differ (or one of which is the zero), by the
 * method of Brent: secant and inverse quadratic steps, with bisection whenever they do not help.
 * @throws RangeError when the signs at the two ends agree
 * Source: R. P. Brent (1973), Algorithms for Minimization without Derivatives, chapter 4.
 */
export function bracketedRoot(f: (x: number) => number, from: number, to: number): number {
  let a = from;
  let b = to;
  let fa = f(a);
  let fb = f(b);
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (fa > 0 === fb > 0)
    throw new RangeError(`from and to must enclose a zero; f(${from}) is ${fa}, f(${to}) is ${fb}`);
  let c = a;
  let fc = fa;
  let last = b - a;
  let before = last;
  for (let round = 0; round < 300; round++) {
    if (fb > 0 === fc > 0) {
      c = a;
      fc = fa;
      last = b - a;
      before = last;
    }
    if (Math.abs(fc) < Math.abs(fb)) [a, b, c, fa, fb, fc] = [b, c, b, fb, fc, fb];
    const tolerance = 2 * Number.EPSILON * Math.abs(b) + 1e-300;
    const half = (c - b) / 2;
    if (Math.abs(half) <= tolerance || fb === 0) return b;
    const step = Math.abs(before) >= tolerance && Math.abs(fa) > Math.abs(fb) ? interpolation() : half;
    const accepted = Math.abs(2 * step) < Math.min(3 * Math.abs(half) - tolerance, Math.abs(before));
    before = accepted ? last : half;
    last = accepted ? step : half;
    a = b;
    fa = fb;
    b += Math.abs(last) > tolerance ? last : Math.sign(half) * tolerance;
    fb = f(b);
  }
  return b;

  function interpolation(): number {
    const s = fb / fa;
    if (a === c) return ((c - b) * s) / (s - 1);
    const q = fa / fc;
    const r = fb / fc;
    const top = s * ((c - b) * q * (q - r) - (b - a) * (r - 1));
    return -top / ((q - 1) * (r - 1) * (s - 1));
  }
}
