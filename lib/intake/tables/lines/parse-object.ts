export type ObjectReading =
  | { readonly ok: true; readonly cells: ReadonlyMap<string, LineCell> }
  | { readonly ok: false; readonly problem: string; readonly fix: string; readonly column?: string };

export interface LineCell {
  readonly text: string;
  /** Whether the value stands as a number, without quotation marks. */
  readonly number: boolean;
}

const text = /"(?:[^"\\]|\\.)*"/y;
const number = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const word = /true|false|null/y;
const blank = /[ \t]*/y;

/**
 * One line of JSON Lines to its cells. Numbers keep the digits that are written, which JSON.parse would round: a serial
 * number may have more of them than a number holds. Nested values are refused by the name of their key.
 */
export function parseObject(line: string): ObjectReading {
  const cells = new Map<string, LineCell>();
  const scanner = new Scanner(line);
  if (!scanner.skips("{")) return notAnObject;
  if (scanner.skips("}")) return scanner.atEnd() ? { ok: true, cells } : malformed(scanner.place);
  for (;;) {
    const key = scanner.takeText();
    if (key === undefined || !scanner.skips(":")) return malformed(scanner.place);
    const value = scanner.takeValue();
    if (value === "nested") return nested(key);
    if (value === undefined) return malformed(scanner.place);
    if (cells.has(key)) return twice(key);
    cells.set(key, value);
    if (scanner.skips(",")) continue;
    if (scanner.skips("}") && scanner.atEnd()) return { ok: true, cells };
    return malformed(scanner.place);
  }
}

class Scanner {
  place = 0;
  private readonly line: string;

  constructor(line: string) {
    this.line = line;
  }

  skips(character: string): boolean {
    this.take(blank);
    if (this.line[this.place] !== character) return false;
    this.place++;
    return true;
  }

  atEnd(): boolean {
    this.take(blank);
    return this.place === this.line.length;
  }

  takeText(): string | undefined {
    this.take(blank);
    const taken = this.take(text);
    if (taken === undefined) return undefined;
    try {
      return String(JSON.parse(taken));
    } catch {
      return undefined; // a control character, or a backslash before a letter that means nothing
    }
  }

  takeValue(): LineCell | "nested" | undefined {
    this.take(blank);
    const next = this.line[this.place];
    if (next === "{" || next === "[") return "nested";
    if (next === '"') {
      const taken = this.takeText();
      return taken === undefined ? undefined : { text: taken, number: false };
    }
    const named = this.take(word);
    if (named !== undefined) return { text: named === "null" ? "" : named, number: false };
    const digits = this.take(number);
    return digits === undefined ? undefined : { text: digits, number: true };
  }

  private take(pattern: RegExp): string | undefined {
    pattern.lastIndex = this.place;
    const [taken] = pattern.exec(this.line) ?? [];
    if (taken !== undefined) this.place += taken.length;
    return taken;
  }
}

const notAnObject: ObjectReading = {
  ok: false,
  problem: "The line is no JSON object.",
  fix: 'Write one object a line, such as {"job_number": "1001"}.',
};

function malformed(place: number): ObjectReading {
  return {
    ok: false,
    problem: `The line is no JSON from its character ${place + 1} on.`,
    fix: "Export the file again with one whole object a line.",
  };
}

function nested(key: string): ObjectReading {
  return {
    ok: false,
    column: key,
    problem: `The key ${key} holds a list or an object.`,
    fix: "Write plain values only; put lists in a file of their own.",
  };
}

function twice(key: string): ObjectReading {
  return { ok: false, column: key, problem: `The key ${key} is there twice.`, fix: "Remove one of the two." };
}
