import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";

// Keeps the look: numbers and colours have one place each, and no rate slips out without its range and count.

const root = fileURLToPath(new URL("..", import.meta.url));

const filesIn = (folder: string, kind: RegExp): string[] =>
  readdirSync(`${root}${folder}`, { recursive: true, encoding: "utf8" })
    .filter((file) => kind.test(file))
    .map((file) => `${folder}/${file}`);

const textOf = (file: string) => readFileSync(`${root}${file}`, "utf8");

describe("numbers", () => {
  const code = ["app", "lib"].flatMap((folder) => filesIn(folder, /\.tsx?$/));
  /** A percent sign after a value, or rounding by hand. */
  const homeMade = /\btoFixed\(|\btoPrecision\(|\}\s?%[`"'<\s]|style: "percent"/;
  /** Each with its reason. */
  const allowed: Readonly<Record<string, string>> = {
    "lib/figures/percent-of-plot.ts": "a position in a drawing, never read by anybody",
    "app/repeats/rates-table.ts": "plain columns for a terminal, with range and count in the same line",
    "lib/claims/claim-amounts.ts": "the handling percentage that a policy states",
    "lib/claims/packet-readings.ts": "drops the dirt of binary fractions, and stays a number",
  };

  test("are turned into text by lib/format only", () => {
    const strays = code.filter((file) => homeMade.test(textOf(file)) && allowed[file] === undefined);
    expect(strays).toEqual([]);
  });

  test("have no exception that is no longer needed", () => {
    expect(Object.keys(allowed).filter((file) => !homeMade.test(textOf(file)))).toEqual([]);
  });
});

describe("drawings of estimates", () => {
  test("take whole estimates, and none takes a bare rate", () => {
    const drawings = [
      ...filesIn("app/_charts", /(interval|estimate).*\.tsx$/),
      ...filesIn("app/_ui", /(interval|estimate).*\.tsx$/),
    ];
    expect(drawings.length).toBeGreaterThanOrEqual(4);
    const bare = drawings.filter((file) => /readonly (rate|point|value|percent): number/.test(textOf(file)));
    expect(bare).toEqual([]);
  });
});

describe("colours", () => {
  const styles = filesIn("app", /\.css$/);

  test("stand in the token block only, so that the palette test sees them all", () => {
    const hex = /#[\da-f]{3,8}\b|\b(rgb|hsl|oklch|lab)a?\(/i;
    expect(styles.filter((file) => file !== "app/globals.css" && hex.test(textOf(file)))).toEqual([]);
    const outside = textOf("app/globals.css")
      .split("\n")
      .filter((line) => hex.test(line) && !line.includes("light-dark("))
      .map((line) => line.trim());
    // Paper has no bench.
    expect(outside).toEqual(["--bench: #ffffff;", "--sheet: #ffffff;"]);
  });

  test("of the tokens used in stylesheets are all defined", () => {
    const defined = new Set(styles.flatMap((file) => [...textOf(file).matchAll(/(--[\w-]+):/g)].map((m) => m[1])));
    const used = styles.flatMap((file) => [...textOf(file).matchAll(/var\((--[\w-]+)\)/g)].map((m) => m[1]));
    expect([...new Set(used)].filter((name) => !defined.has(name))).toEqual([]);
  });
});

test("nothing moves by itself: no stylesheet has an animation or a transition", () => {
  const moving = filesIn("app", /\.css$/).filter((file) => /\b(animation|transition)(-\w+)?:/.test(textOf(file)));
  expect(moving).toEqual([]);
});

test("nothing is fetched from elsewhere by a stylesheet or a page", () => {
  const outside = filesIn("app", /\.(css|tsx?)$/).filter((file) =>
    /url\(\s*["']?https?:|src="https?:/.test(textOf(file)),
  );
  expect(outside).toEqual([]);
});
