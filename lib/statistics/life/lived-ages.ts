import { requireNonNegative } from "../require";

/** Failures, and time lived, in bands of age one unit wide: [0, 1), [1, 2) … Both lists are of one length. */
export interface LivedAges {
  readonly failed: Float64Array;
  /** In units of age: a life that passes through a band whole adds 1 to it. */
  readonly lived: Float64Array;
}

/**
 * Adds lives up to `LivedAges`, each in a few steps however long it is. Counts below 0 take lives away again. With whole
 * ages and counts, and a band of few binary digits, no step rounds: the order of the lives does not show in the sums.
 */
export class AgeTally {
  /** In units of the ages that are handed over. */
  readonly #band: number;
  #failed = new Float64Array(64);
  /** Lives that passed the band whole, as differences: those of a band are the sum of its place and all after it. */
  #passed = new Float64Array(64);
  #part = new Float64Array(64);

  constructor(band = 1) {
    this.#band = band;
  }

  /** One life, or several alike, from one age to a later one. @throws RangeError for an age below 0 */
  add(entry: number, exit: number, failed: boolean, count: number): void {
    requireNonNegative("entry", entry);
    this.#room(Math.floor(exit / this.#band));
    this.#upTo(exit, count);
    this.#upTo(entry, -count);
    if (failed) add(this.#failed, Math.floor(exit / this.#band), count);
  }

  counts(): LivedAges {
    let bands = this.#failed.length;
    while (bands > 0 && !this.#failed[bands - 1] && !this.#passed[bands - 1] && !this.#part[bands - 1]) bands -= 1;
    const lived = this.#part.slice(0, bands);
    let whole = 0;
    for (let band = bands - 1; band >= 0; band--) {
      // What is taken away again leaves rests of rounding.
      lived[band] = Math.max(0, (lived[band] ?? 0) / this.#band + whole);
      whole += this.#passed[band] ?? 0;
    }
    return { failed: this.#failed.slice(0, bands), lived };
  }

  #upTo(age: number, count: number): void {
    const band = Math.floor(age / this.#band);
    add(this.#passed, band, count);
    add(this.#part, band, count * (age - band * this.#band));
  }

  #room(band: number): void {
    if (band < this.#failed.length) return;
    const longer = (held: Float64Array) => {
      const grown = new Float64Array(2 * band);
      grown.set(held);
      return grown;
    };
    this.#failed = longer(this.#failed);
    this.#passed = longer(this.#passed);
    this.#part = longer(this.#part);
  }
}

function add(sums: Float64Array, place: number, amount: number): void {
  sums[place] = (sums[place] ?? 0) + amount;
}
