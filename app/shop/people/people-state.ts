import type { FieldProblem } from "@/app/_ui/error-summary";

export interface PeopleState {
  readonly problems: readonly FieldProblem[];
  /** What was typed, shown again while something is wrong. */
  readonly texts: Readonly<Record<string, string>>;
  readonly made?: { readonly name: string; readonly href: string } | undefined;
  readonly said?: string | undefined;
}

export const untouched: PeopleState = { problems: [], texts: {} };
