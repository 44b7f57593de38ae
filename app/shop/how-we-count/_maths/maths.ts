import { createElement, type ReactNode } from "react";

// Formulas as MathML, which browsers set, print and read aloud by themselves. Everywhere plain text is taken as words
// parted by spaces, each set by its kind: a number, a name or a sign.

/** A row of a formula; what stands in ${} is set as it is, such as a fraction. */
export function maths(texts: TemplateStringsArray, ...parts: readonly ReactNode[]): ReactNode {
  return createElement(
    "mrow",
    null,
    ...bracketed(texts.flatMap((text, index) => [...wordsOf(text), { part: parts[index] }])),
  );
}

type Piece = string | { readonly part: ReactNode };

/** What stands between brackets becomes a row of its own, so that they grow as high as that and no higher. */
function bracketed(pieces: readonly Piece[]): ReactNode[] {
  const rows: ReactNode[][] = [[]];
  for (const piece of pieces) {
    if (piece === "(" || piece === "[") rows.push([]);
    rows.at(-1)?.push(typeof piece === "string" ? token(piece) : set(piece.part));
    if (piece === ")" || piece === "]") {
      const inner = rows.pop() ?? [];
      rows.at(-1)?.push(createElement("mrow", null, ...inner));
    }
  }
  return rows.flat();
}

export const fraction = (above: ReactNode, below: ReactNode) => createElement("mfrac", null, set(above), set(below));
export const root = (inside: ReactNode) => createElement("msqrt", null, set(inside));
export const raised = (base: ReactNode, power: ReactNode) => createElement("msup", null, set(base), set(power));
export const indexed = (base: ReactNode, index: ReactNode) => createElement("msub", null, set(base), set(index));
export const both = (base: ReactNode, index: ReactNode, power: ReactNode) =>
  createElement("msubsup", null, set(base), set(index), set(power));
/** What was found, as against what is true: the letter with a hat. */
export const found = (of: ReactNode) =>
  createElement("mover", { accent: "true" }, set(of), createElement("mo", { stretchy: "false" }, "^"));
/** Σ or Π with what it runs over. */
export const over = (sign: "∑" | "∏", range: ReactNode) =>
  createElement("munder", null, createElement("mo", { largeop: "true", movablelimits: "false" }, sign), set(range));
function set(node: ReactNode): ReactNode {
  if (typeof node !== "string") return node;
  const pieces = bracketed(wordsOf(node));
  return pieces.length === 1 ? pieces[0] : createElement("mrow", null, ...pieces);
}

function wordsOf(text: string): string[] {
  return text.split(/\s+/).filter((word) => word !== "");
}

function token(word: string): ReactNode {
  return createElement(kindOf(word), null, word);
}

function kindOf(word: string): "mn" | "mi" | "mo" {
  if (/^[\d.½]/.test(word)) return "mn";
  return /^\p{L}/u.test(word) ? "mi" : "mo";
}
