import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";

// Keeps the house: which room may import which, how long files get, and words that have no place in it.

const root = fileURLToPath(new URL("..", import.meta.url));

/** Rooms and what each may import besides itself; packages by name. Whatever is not listed may not be imported. */
const mayImport: Readonly<Record<string, readonly string[]>> = {
  "lib/statistics": [],
  "lib/calendar": ["temporal-polyfill"],
  "lib/domain": ["lib/calendar"],
  "lib/intake": [
    "lib/domain",
    "lib/calendar",
    "zod",
    "csv-parse",
    "yauzl",
    "saxes",

    "node:stream",
    "node:fs",
    "node:buffer",
    "node:zlib",
  ],
  "lib/failures": ["lib/domain", "lib/calendar", "lib/statistics"],
  "lib/coverage": ["lib/domain", "lib/calendar"],
  "lib/evidence": ["lib/domain", "lib/calendar"],
  "lib/claims": ["lib/domain", "lib/calendar", "lib/coverage", "lib/evidence", "zod"],
  "lib/sheets": ["lib/domain", "lib/calendar", "lib/statistics", "lib/evidence", "lib/format", "zod"],
  "lib/forecast": ["lib/domain", "lib/calendar", "lib/statistics", "lib/failures"],
  "lib/signals": ["lib/domain", "lib/calendar", "lib/statistics", "lib/failures"],
  "lib/stock": ["lib/domain", "lib/calendar", "lib/statistics", "lib/forecast"],
  "lib/figures": [
    "lib/domain",
    "lib/calendar",
    "lib/statistics",
    "lib/failures",
    "lib/evidence",
    "lib/claims",
    "lib/forecast",
    "lib/signals",
    "lib/stock",
    "lib/format",
  ],
  "lib/format": ["lib/domain", "lib/calendar", "lib/statistics"],
  "db/schema": ["lib", "drizzle-orm"],
  db: [
    "lib",
    "synthetic-data",
    "drizzle-orm",
    "drizzle-kit",
    "pg",
    "pg-copy-streams",
    "zod",
    "csv-parse",
    "sharp",
    "exif-reader",
    "libheif-js",
    "tsx",
    "node:",
  ],
  "synthetic-data": ["lib/domain", "lib/calendar", "sharp", "node:"],
};

const sources = (folder: string): string[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: "utf8" })
    .filter((file) => /\.(ts|tsx|mjs)$/.test(file))
    .map((file) => `${folder}/${file}`);

/** Every module that a file imports, as a path from the root, or a package by its name. */
function importsOf(file: string): string[] {
  const text = readFileSync(join(root, file), "utf8");
  const found = text.matchAll(
    /(?:^|\n)\s*(?:import|export)[^"'`;]*?from\s+"([^"]+)"|(?:^|\n)import\s+"([^"]+)"|import\(\s*"([^"]+)"/g,
  );
  return [...found].map((match) => {
    const target = match[1] ?? match[2] ?? match[3] ?? "";
    if (target.startsWith("@/")) return target.slice(2);
    return target.startsWith(".") ? relative(root, join(root, dirname(file), target)) : target;
  });
}

function isAllowed(target: string, homes: readonly string[]): boolean {
  return homes.some((home) => target === home || target.startsWith(home.endsWith(":") ? home : `${home}/`));
}

describe("directions", () => {
  test.each(Object.entries(mayImport))("%s imports only %j", (folder, allowed) => {
    const inner = Object.keys(mayImport).filter((other) => other !== folder && other.startsWith(`${folder}/`));
    const own = sources(folder).filter((file) => !inner.some((room) => file.startsWith(`${room}/`)));
    const strays = own.flatMap((file) =>
      importsOf(file)
        .filter((target) => !isAllowed(target, [folder, ...allowed]))
        .map((target) => `${file} imports ${target}`),
    );
    expect(strays).toEqual([]);
  });

  test("a page imports nothing of another place's pages", () => {
    const strays = sources("app").flatMap((file) => {
      const place = file.split("/")[1] ?? "";
      if (place.startsWith("_") || place === "commands" || !file.includes("/", 4)) return [];
      return importsOf(file)
        .filter((target) => target.startsWith("app/") && !target.startsWith("app/_") && target.split("/")[1] !== place)
        .map((target) => `${file} imports ${target}`);
    });
    expect(strays).toEqual([]);
  });

  test("lib reads no clock, no environment and no unseeded chance", () => {
    const forbidden = /\bDate\.now\(|\bnew Date\(\)|\bMath\.random\(|\bprocess\.env\b|Temporal\.Now/;
    expect(sources("lib").filter((file) => forbidden.test(readFileSync(join(root, file), "utf8")))).toEqual([]);
  });

  test("only one place opens a transaction for writing", () => {
    const openers = ["app", "db", "lib"]
      .flatMap(sources)
      .filter((file) =>
        /sql\.begin\(|"begin"|\bBEGIN\b(?! TRANSACTION READ ONLY)/.test(readFileSync(join(root, file), "utf8")),
      );
    expect(
      openers.filter((file) => !["db/in-transaction.ts", "db/write-connections.ts", "db/write-gate.ts"].includes(file)),
    ).toEqual([]);
  });
});

describe("sizes", () => {
  const rooms = ["lib", "db", "app", "synthetic-data", "e2e", "tests"].flatMap(sources);
  const lengthOf = (file: string) => readFileSync(join(root, file), "utf8").split("\n").length;

  test("no file of code has more than 300 lines, tables of constants apart", () => {
    const tables =
      /lib\/evidence\/(checks|entries)\/|lib\/domain\/(components|symptoms|failure-modes)|coefficients|synthetic-data\/(models|component-)/;
    expect(rooms.filter((file) => !tables.test(file) && lengthOf(file) > 300)).toEqual([]);
  });

  test("nine files in ten have less than 150 lines", () => {
    const long = rooms.filter((file) => lengthOf(file) > 150);
    expect(long.length / rooms.length, long.join(", ")).toBeLessThan(0.1);
  });
});

describe("words", () => {
  const texts = ["lib", "db", "app", "tests", "e2e", "synthetic-data"].flatMap(sources);

  test("no cast to any, no unfinished note, no barrel", () => {
    // A column of a query may be called any; in code the word would turn the types off.
    const unfinished = /\bas any\b(?!`| from)|\bTODO\b|\bFIXME\b|@ts-ignore|@ts-expect-error/;
    const sinners = texts.filter(
      (file) => file !== "tests/house.test.ts" && unfinished.test(readFileSync(join(root, file), "utf8")),
    );
    expect(sinners).toEqual([]);
    expect(["lib", "app", "synthetic-data"].flatMap(sources).filter((file) => /(^|\/)index\.tsx?$/.test(file))).toEqual(
      [],
    );
  });
});
