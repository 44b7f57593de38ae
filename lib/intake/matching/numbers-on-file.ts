/** Letters and digits that are taken for each other on worn plates and in handwriting. Common practice, no source. */
const twins: Readonly<Record<string, string>> = { O: "0", I: "1", S: "5", B: "8" };

/**
 * Numbers that are on file, all as `normalised` writes them. They are kept by their outline, in which twins are one
 * character, so that asking for what looks alike costs one look-up however many twins a number has.
 */
export class NumbersOnFile {
  private readonly byOutline = new Map<string, string | string[]>();

  constructor(numbers: Iterable<string>) {
    for (const number of numbers) this.add(number);
  }

  has(number: string): boolean {
    const alike = this.byOutline.get(outline(number));
    return typeof alike === "string" ? alike === number : alike?.includes(number) === true;
  }

  /** Those that differ from this one in one such character, or else in two; for offering, never for applying. */
  lookAlikes(number: string): readonly string[] {
    const alike = this.byOutline.get(outline(number));
    if (alike === undefined) return [];
    const near = [alike].flat().map((other) => ({ other, places: placesApart(number, other) }));
    const inOne = near.filter(({ places }) => places.length === 1);
    const found = inOne.length > 0 ? inOne : near.filter(({ places }) => places.length === 2);
    return found.sort((a, b) => byPlace(a.places, b.places)).map(({ other }) => other);
  }

  private add(number: string): void {
    const shape = outline(number);
    const alike = this.byOutline.get(shape);
    if (alike === undefined) this.byOutline.set(shape, number);
    else if (typeof alike === "string") this.byOutline.set(shape, alike === number ? alike : [alike, number]);
    else if (!alike.includes(number)) alike.push(number);
  }
}

function outline(number: string): string {
  return number.replace(/[OISB]/g, (letter) => twins[letter] ?? letter);
}

/** The first places in which two numbers of one outline differ; no more than three are needed. */
function placesApart(a: string, b: string): readonly number[] {
  const places: number[] = [];
  for (let place = 0; place < a.length && places.length < 3; place++) if (a[place] !== b[place]) places.push(place);
  return places;
}

function byPlace([a = 0, second = 0]: readonly number[], [b = 0, other = 0]: readonly number[]): number {
  return a - b || second - other;
}
