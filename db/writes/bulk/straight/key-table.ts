const first = 1 << 12;
const free = -1;

/** Keys of 63 bits, numbered in the order in which they come: far smaller than a Map of as many. */
export class KeyTable {
  size = 0;
  highs = new Int32Array(first);
  lows = new Uint32Array(first);
  #slots = new Int32Array(4 * first).fill(free);

  /** @returns the key's number, which is the size before the call where the key is new */
  add(high: number, low: number): number {
    if (2 * this.size >= this.#slots.length) this.#spread();
    const slot = this.#slotOf(high, low);
    const known = this.#slots[slot] ?? free;
    if (known !== free) return known;
    if (this.size === this.highs.length) this.#lengthen();
    this.highs[this.size] = high;
    this.lows[this.size] = low;
    this.#slots[slot] = this.size;
    return this.size++;
  }

  /** @returns the key's number, or -1 */
  find(high: number, low: number): number {
    return this.#slots[this.#slotOf(high, low)] ?? free;
  }

  #slotOf(high: number, low: number): number {
    const last = this.#slots.length - 1;
    for (let slot = (Math.imul(high, 0x9e3779b1) ^ low) & last; ; slot = (slot + 1) & last) {
      const known = this.#slots[slot] ?? free;
      if (known === free || (this.highs[known] === high && this.lows[known] === low)) return slot;
    }
  }

  #lengthen(): void {
    const [highs, lows] = [new Int32Array(2 * this.size), new Uint32Array(2 * this.size)];
    highs.set(this.highs);
    lows.set(this.lows);
    this.highs = highs;
    this.lows = lows;
  }

  #spread(): void {
    this.#slots = new Int32Array(2 * this.#slots.length).fill(free);
    for (let key = 0; key < this.size; key++)
      this.#slots[this.#slotOf(this.highs[key] ?? 0, this.lows[key] ?? 0)] = key;
  }
}
