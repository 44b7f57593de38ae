import type { FieldProblem } from "@/app/_ui/error-summary";
import { type Day, readDay } from "@/lib/calendar/day";
import type { LineAmount } from "@/lib/claims/life/claim-act";

/** Reads a form field by field and gathers everything that is wrong. What it hands out is only good without problems. */
export class FormReader {
  readonly problems: FieldProblem[] = [];

  constructor(
    private readonly form: FormData,
    private readonly today: Day,
  ) {}

  optional(name: string): string | undefined {
    const value = this.form.get(name);
    const text = typeof value === "string" ? value.trim().slice(0, 4_000) : "";
    return text === "" ? undefined : text;
  }

  required(name: string, problem: string): string {
    return this.optional(name) ?? this.wrong(name, problem, "");
  }

  oneOf<T extends string>(name: string, allowed: readonly [T, ...T[]] | readonly T[], problem: string): T {
    const text = this.optional(name);
    const found = allowed.find((each) => each === text);
    return found ?? this.wrong(name, problem, allowed[0] as T); // no list of choices is empty
  }

  day(name: string): Day {
    const text = this.optional(name);
    const day = text === undefined ? undefined : readDay(text);
    if (day === undefined)
      return this.wrong(
        name,
        text === undefined ? "Enter the day." : `“${text}” is not a day; write it as 2026-03-31.`,
        this.today,
      );
    return day > this.today
      ? this.wrong(name, `${day} is still to come: enter the day on which it happened.`, day)
      : day;
  }

  /** Amounts by line: `line-1` holds "12.50". */
  money(): readonly LineAmount[] {
    return [...this.form.keys()].flatMap((name) => {
      const line = /^line-(\d{1,4})$/.exec(name)?.[1];
      return line === undefined ? [] : [{ line: Number(line), cents: this.cents(name) }];
    });
  }

  someMoney(): readonly LineAmount[] {
    const lines = this.money();
    const first = lines[0];
    const isNothing = this.problems.length === 0 && lines.every(({ cents }) => cents === 0);
    if (isNothing)
      this.wrong(first === undefined ? "on" : `line-${first.line}`, "Enter an amount for at least one line.", 0);
    return lines;
  }

  /** Texts of all fields whose names begin so, by the rest of the name. */
  under(prefix: string): Readonly<Record<string, string>> {
    const names = [...this.form.keys()].filter((name) => name.startsWith(prefix));
    return Object.fromEntries(names.map((name) => [name.slice(prefix.length), this.optional(name) ?? ""]));
  }

  private cents(name: string): number {
    const text = this.optional(name) ?? "0";
    const plain = text.replaceAll(/[\s,](?=\d{3}(\D|$))/g, "").replace(",", ".");
    if (!/^\d{1,9}(\.\d{1,2})?$/.test(plain))
      return this.wrong(name, `“${text.slice(0, 40)}” is not an amount; write it as 65.00.`, 0);
    const [whole = "0", part = ""] = plain.split(".");
    return Number(whole) * 100 + Number(part.padEnd(2, "0"));
  }

  private wrong<T>(field: string, text: string, instead: T): T {
    this.problems.push({ field, text });
    return instead;
  }
}
