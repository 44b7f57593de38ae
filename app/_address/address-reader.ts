import { type Day, readDay } from "@/lib/calendar/day";

export type AddressValues = Readonly<Record<string, string | readonly string[] | undefined>>;

/** Reads a query string word by word. What cannot be read is left out with a notice: a shared link never ends in an error. */
export class AddressReader {
  private readonly found: string[] = [];

  constructor(
    private readonly values: AddressValues,
    private readonly names: readonly string[],
  ) {
    for (const name of Object.keys(values)) {
      if (!names.includes(name)) this.note(`“${short(name)}” is not one of our filters; it was left out.`);
    }
  }

  /** Each a sentence: what was left out, and what to write instead. */
  get notices(): readonly string[] {
    return this.found;
  }

  note(sentence: string): void {
    this.found.push(sentence);
  }

  /** The last of several values of one name; undefined where it is absent or blank. */
  text(name: string): string | undefined {
    const value = this.values[name];
    const last = (typeof value === "string" ? value : value?.at(-1))?.trim();
    return last === "" ? undefined : last?.slice(0, 200);
  }

  oneOf<T extends string>(name: string, allowed: readonly T[], hint: string): T | undefined {
    const text = this.text(name);
    if (text === undefined) return undefined;
    const word = allowed.find((candidate) => candidate === text);
    if (word === undefined) this.note(`“${short(text)}” is not a ${name} that we know; it was left out. ${hint}`);
    return word;
  }

  dayOf(name: string): Day | undefined {
    const text = this.text(name);
    if (text === undefined) return undefined;
    const day = readDay(text);
    if (day === undefined) this.note(`“${short(text)}” is not a day; “${name}” was left out. Write it as 2025-03-31.`);
    return day;
  }

  /** So many days, up to ten years. */
  dayCountOf(name: string): number | undefined {
    const text = this.text(name);
    if (text === undefined) return undefined;
    const isCount = /^\d{1,4}$/.test(text) && Number(text) <= 3_650;
    if (!isCount) this.note(`“${short(text)}” is no number of days; “${name}” was left out. Write it as 7.`);
    return isCount ? Number(text) : undefined;
  }

  /** Every filter that the address names, as it names it, in the order of the page. */
  get inForce(): readonly { readonly name: string; readonly value: string }[] {
    return this.names.flatMap((name) => {
      const value = this.text(name);
      return value === undefined ? [] : [{ name, value }];
    });
  }
}

export function short(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}
