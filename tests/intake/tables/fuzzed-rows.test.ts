import { expect, test } from "vitest";
import { soakSeeds } from "../../soak-seeds";
import { fileOf, itemsOf, lookAt, seededNumbers } from "./table-files";

// No row vanishes: rows are written by a generator that counts them itself, and that many come out, whatever is in them.
// A quoted cell never begins with a delimiter or a line end here: after a mark that was never closed such a cell reads
// as its end by RFC 4180, and no reader can know better.

const columns = 12;
const rowCount = 10_000;
const pieces = [
  "a",
  "Z",
  "9",
  " ",
  "é",
  "Ω",
  "½",
  "\0",
  "\ufeff",
  "\u202e",
  "\u200f",
  "e\u0301",
  "日本",
  "\u{1f6bf}",
  "'",
  "=",
  "\t",
];

type Below = (most: number) => number;

function word(below: Below): string {
  return Array.from({ length: 1 + below(5) }, () => pieces[below(pieces.length)]).join("");
}

/** One cell as it is written, and what it must read as; undefined where only the row counts. */
function cell(below: Below, row: number): readonly [string, string | undefined] {
  switch (below(12)) {
    case 0: {
      const text = `k${word(below)},"${word(below)}"\n;${word(below)}\r\n`;
      return [`"${text.replaceAll('"', '""')}"`, text];
    }
    case 1: {
      const text = `${below(99)}" hose`;
      return [text, text];
    }
    case 2:
      return ["", ""];
    case 3: {
      const text = row % 3000 === 7 ? "m".repeat(1_000_000) : "m";
      return [`"${text}"`, text];
    }
    default: {
      const text = `k${word(below)}`;
      return [text, text];
    }
  }
}

function fuzzedFile(seed: number) {
  const below = seededNumbers(seed);
  const ends = ["\n", "\r\n", "\r"];
  const lines = [`${Array.from({ length: columns }, (_, place) => `column ${place}`).join(",")}\n`];
  const expected: (readonly (string | undefined)[] | "unread")[] = [];
  for (let row = 0; row < rowCount; row++) {
    const width = below(50) === 0 ? 1 + below(300) : columns;
    const cells = Array.from({ length: width }, () => cell(below, row));
    if (cells.every(([written]) => written === "")) cells[0] = ["k", "k"];
    const broken = below(40) === 0;
    const written = cells.map(([text]) => text).join(",");
    lines.push((broken ? `b,"${word(below)}k` : written) + ends[below(broken ? 2 : 3)]);
    expected.push(broken ? "unread" : cells.map(([, text]) => text));
  }
  return { text: lines.join(""), expected };
}

// Twenty seeds by `npm run soak -- fuzz`.
test.each(soakSeeds([1, 2, 3, 4]))(
  "10,000 rows in, 10,000 rows out, cell by cell, seed %i",
  async (seed) => {
    const { text, expected } = fuzzedFile(seed);
    const path = fileOf(text);
    const look = await lookAt(path);
    const items = await itemsOf(path);
    expect(look.rows).toBe(rowCount);
    expect(look.unreadRows).toBe(expected.filter((each) => each === "unread").length);
    expect(items).toHaveLength(rowCount);
    const wrong = items.findIndex((item, place) => {
      const wanted = expected[place];
      if (wanted === "unread") return item.kind !== "unread";
      return item.kind !== "row" || JSON.stringify(item.cells) !== JSON.stringify(wanted);
    });
    expect([wrong, items[wrong], expected[wrong]]).toEqual([-1, undefined, undefined]);
  },
  60_000,
);

// Bytes of any value, so that lines are cut anywhere and no encoding is whole: every line still comes out once.
test.each([1, 2, 3, 4, 5])("lines of random bytes all come out, seed %i", async (seed) => {
  const below = seededNumbers(seed);
  const safe = Array.from({ length: 256 }, (_, byte) => byte).filter((byte) => ![0x0a, 0x0d, 0x22].includes(byte));
  const lines = Array.from({ length: 5000 }, (_, row) =>
    Buffer.from([
      0x6b,
      ...Array.from({ length: below(30) }, () => safe[below(row % 2 === 0 ? 60 : safe.length)] ?? 0),
      0x0a,
    ]),
  );
  const path = fileOf(Buffer.concat([Buffer.from("one,two,three\n"), Buffer.from("a,b,c\n".repeat(20_000)), ...lines]));
  expect((await lookAt(path)).rows).toBe(25_000);
  expect(await itemsOf(path)).toHaveLength(25_000);
});
