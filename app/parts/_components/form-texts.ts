import { short } from "@/app/_address/address-reader";
import type { FieldProblem } from "@/app/_ui/error-summary";
import { type Day, readDay } from "@/lib/calendar/day";
import { typedCents } from "@/lib/format/typed-cents";

/** Reads the texts of a form field by field and gathers everything that is wrong. What it hands out is only good without problems. */
export class FormTexts {
  readonly problems: FieldProblem[] = [];

  constructor(private readonly form: FormData) {}

  optional(name: string): string | undefined {
    const value = this.form.get(name);
    const text = typeof value === "string" ? value.trim().slice(0, 1_000) : "";
    return text === "" ? undefined : text;
  }

  oneOf<T extends string>(name: string, allowed: readonly [T, ...T[]], problem: string): T {
    const text = this.optional(name);
    return allowed.find((each) => each === text) ?? this.wrong(name, problem, allowed[0]);
  }

  /** A whole number from `least`. @param what how the problem names it, such as "Pieces" */
  whole(name: string, what: string, least: number, instead: number): number {
    const text = this.optional(name);
    if (text === undefined) return instead;
    const plain = text.replaceAll(/[\s,](?=\d{3}(\D|$))/g, "");
    if (!/^\d{1,7}$/.test(plain))
      return this.wrong(name, `${what}: “${short(text)}” is no whole number; write it as 4.`, instead);
    const count = Number(plain);
    return count < least ? this.wrong(name, `${what}: ${count} is less than ${least}.`, instead) : count;
  }

  needed(name: string, what: string, least: number): number {
    if (this.optional(name) === undefined) return this.wrong(name, `${what}: enter how many.`, least);
    return this.whole(name, what, least, least);
  }

  cents(name: string, what: string): number | undefined {
    const text = this.optional(name);
    if (text === undefined) return undefined;
    const cents = typedCents(text, 9);
    return cents ?? this.wrong(name, `${what}: “${short(text)}” is not an amount; write it as 65.00.`, undefined);
  }

  day(name: string, what: string): Day | undefined {
    const text = this.optional(name);
    if (text === undefined) return undefined;
    const day = readDay(text);
    return day ?? this.wrong(name, `${what}: “${short(text)}” is no day; write it as 2026-03-31.`, undefined);
  }

  /** A day that has come. */
  pastDay(name: string, what: string, today: Day): Day {
    const day = this.day(name, what);
    if (day === undefined) {
      if (this.optional(name) === undefined) this.wrong(name, `${what}: enter the day.`, undefined);
      return today;
    }
    return day > today ? this.wrong(name, `${what}: ${day} is still to come.`, today) : day;
  }

  wrong<T>(field: string, text: string, instead: T): T {
    this.problems.push({ field, text });
    return instead;
  }
}
