import { readFileSync } from "node:fs";

export const schemes = ["light", "dark"] as const;
export type Scheme = (typeof schemes)[number];

/** Colour tokens of a stylesheet: every `--name: light-dark(#light, #dark);` */
export function readTokens(file: URL): Readonly<Record<Scheme, ReadonlyMap<string, string>>> {
  const found = [...readFileSync(file, "utf8").matchAll(/--([\w-]+):\s*light-dark\((#[\da-f]{6}),\s*(#[\da-f]{6})\)/g)];
  const column = (index: 2 | 3) => new Map(found.map((match) => [match[1] ?? "", match[index] ?? ""]));
  return { light: column(2), dark: column(3) };
}
