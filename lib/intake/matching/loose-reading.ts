/** What a foreign cell says, as text for the strict parsers; or why nobody but a person can say. */
export type LooseReading =
  | {
      readonly kind: "taken";
      readonly text: string;
      /** Why it is not what stands in the cell; left out where it is. */
      readonly note?: string;
      /** The matching alone explains it. */
      readonly ordinary?: true;
    }
  | { readonly kind: "held"; readonly problem: string; readonly fix: string };

export function asItStands(text: string): LooseReading {
  return { kind: "taken", text };
}

/** Another text for the same value, by a rule that the matching states. */
export function rewritten(text: string, note: string): LooseReading {
  return { kind: "taken", text, note, ordinary: true };
}

export function takenWithNote(text: string, note: string): LooseReading {
  return { kind: "taken", text, note };
}

export function leftBlank(note: string): LooseReading {
  return { kind: "taken", text: "", note };
}

export function held(problem: string, fix: string): LooseReading {
  return { kind: "held", problem, fix };
}
