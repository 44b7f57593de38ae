export interface TurnRules {
  /** So many of one person's requests are answered at the same time. */
  readonly atOnce: number;
  /** So many more of theirs wait. */
  readonly waiting: number;
  /** For so long. */
  readonly patienceMs: number;
}

export interface Turn {
  /** False where too many wait already, or this one waited for too long. */
  readonly granted: Promise<boolean>;
  /** Ends the turn, or the waiting for it, at whichever it stands; the next one in line begins. Once is enough, more often does no harm. */
  end(): void;
}

interface Line {
  served: number;
  readonly waiting: Set<(granted: boolean) => void>;
}

/** Lines of one process, one for each person: whoever asks for much waits behind themselves, and never in front of another. */
export class Turns {
  readonly #rules: TurnRules;
  readonly #lines = new Map<string, Line>();

  constructor(rules: TurnRules) {
    this.#rules = rules;
  }

  ask(who: string): Turn {
    const line = this.#lines.get(who) ?? { served: 0, waiting: new Set() };
    this.#lines.set(who, line);
    if (line.served < this.#rules.atOnce) {
      line.served += 1;
      return { granted: Promise.resolve(true), end: once(() => this.#next(who, line)) };
    }
    if (line.waiting.size >= this.#rules.waiting) return { granted: Promise.resolve(false), end: () => {} };
    return this.#wait(who, line);
  }

  /** How many people have a line now. */
  get lines(): number {
    return this.#lines.size;
  }

  #wait(who: string, line: Line): Turn {
    let answer: (granted: boolean) => void = () => {};
    let wasServed = false;
    const granted = new Promise<boolean>((resolve) => {
      const late = setTimeout(() => answer(false), this.#rules.patienceMs);
      answer = (isGranted) => {
        clearTimeout(late);
        line.waiting.delete(answer);
        wasServed = isGranted;
        resolve(isGranted);
      };
      line.waiting.add(answer);
    });
    const end = once(() => {
      if (wasServed) this.#next(who, line);
      else answer(false);
    });
    return { granted, end };
  }

  /** A turn is handed on without being given back in between, so that nobody new comes before whoever waits. */
  #next(who: string, line: Line): void {
    const [first] = line.waiting;
    if (first !== undefined) {
      first(true);
      return;
    }
    line.served -= 1;
    if (line.served === 0) this.#lines.delete(who);
  }
}

function once(act: () => void): () => void {
  let done = false;
  return () => {
    if (done) return;
    done = true;
    act();
  };
}
