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

/** Objects within objects beyond this are kept as their text. */
const deepest = 4;

/**
 * One line of JSON Lines to its cells. Numbers keep the digits that are written, which JSON.parse would round: a serial
 * number may have more of them than a number holds. What an object within the object holds stands under both keys,
 * joined by a point; a list is one cell, as it is written.
 */
export function parseObject(line: string): ObjectReading {
  const cells = new Map<string, LineCell>();
  const scanner = new Scanner(line);
  if (!scanner.skips("{")) return notAnObject;
  const wrong = readMembers(scanner, cells, "");
  if (wrong !== undefined) return wrong;
  return scanner.atEnd() ? { ok: true, cells } : malformed(scanner.place);
}

/** The members of an object whose brace is behind. @returns what is wrong, if anything is */
function readMembers(scanner: Scanner, cells: Map<string, LineCell>, within: string): ObjectReading | undefined {
  if (scanner.skips("}")) return undefined;
  for (;;) {
    const name = scanner.takeText();
    if (name === undefined || !scanner.skips(":")) return malformed(scanner.place);
    const key = `${within}${name}`;
    if (scanner.beginsObject() && key.split(".").length < deepest) {
      scanner.skips("{");
      const wrong = readMembers(scanner, cells, `${key}.`);
      if (wrong !== undefined) return wrong;
    } else {
      const value = scanner.takeValue();
      if (value === undefined) return malformed(scanner.place);
      if (cells.has(key)) return twice(key);
      cells.set(key, value);
    }
    if (scanner.skips(",")) continue;
    return scanner.skips("}") ? undefined : malformed(scanner.place);
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

  beginsObject(): boolean {
    this.take(blank);
    return this.line[this.place] === "{";
  }

  takeValue(): LineCell | undefined {
    this.take(blank);
    const next = this.line[this.place];
    if (next === "{" || next === "[") {
      const whole = this.takeNested();
      return whole === undefined ? undefined : { text: whole, number: false };
    }
    if (next === '"') {
      const taken = this.takeText();
      return taken === undefined ? undefined : { text: taken, number: false };
    }
    const named = this.take(word);
    if (named !== undefined) return { text: named === "null" ? "" : named, number: false };
    const digits = this.take(number);
    return digits === undefined ? undefined : { text: digits, number: true };
  }

  /** A list or an object up to the bracket that closes it, as it is written; undefined where it is no JSON. */
  private takeNested(): string | undefined {
    const from = this.place;
    let depth = 0;
    do {
      const next = this.line[this.place];
      if (next === '"') {
        if (this.take(text) === undefined) return undefined;
        continue;
      }
      if (next === undefined) return undefined;
      if (next === "{" || next === "[") depth++;
      else if (next === "}" || next === "]") depth--;
      this.place++;
    } while (depth > 0);
    const whole = this.line.slice(from, this.place);
    return isJson(whole) ? whole : undefined;
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

function isJson(written: string): boolean {
  try {
    JSON.parse(written);
    return true;
  } catch {
    return false;
  }
}

function twice(key: string): ObjectReading {
  return { ok: false, column: key, problem: `The key ${key} is there twice.`, fix: "Remove one of the two." };
}
