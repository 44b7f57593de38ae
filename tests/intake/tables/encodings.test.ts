import { expect, test } from "vitest";
import { encodings } from "@/lib/intake/tables/table-form";
import { decodeWindows1252 } from "@/lib/intake/tables/windows-1252";
import { cellsOf, fileOf, lookAt } from "./table-files";

// Names of encodings are those of the WHATWG Encoding Standard, which TextDecoder implements; a name that it did not
// know, or knew under another label, would throw or differ here.
test.each(encodings)("%s is a name of the WHATWG standard", (encoding) => {
  expect(new TextDecoder(encoding).encoding).toBe(encoding);
});

// NFC and NFD serials, a no-break space, fractions, degrees. Ω is not in Windows-1252.
const shared = `Job;Serial;Note\r\n1;Stra\u00dfe-\u00e9;caf\u00e9 \u00bd in\u00a0\u2013 120 \u00b0F\r\n2;"a;b";\u201cquoted\u201d \u20ac\r\n`;
const beyond = `${shared}3;e\u0301-NFD;5 \u03a9\r\n`;

function utf16be(text: string): Buffer {
  return Buffer.from(text, "utf16le").swap16();
}

/** Bytes 80 to 9F as TextDecoder of Chromium 156 decodes them, which follows the standard; Node 20's does not. */
const fromBrowser =
  "20ac 0081 201a 0192 201e 2026 2020 2021 02c6 2030 0160 2039 0152 008d 017d 008f " +
  "0090 2018 2019 201c 201d 2022 2013 2014 02dc 2122 0161 203a 0153 009d 017e 0178";

const windowsCodes = Array.from({ length: 256 }, (_, byte) => {
  const code = byte < 0x80 || byte > 0x9f ? byte : Number.parseInt(fromBrowser.split(" ")[byte - 0x80] ?? "", 16);
  return String.fromCharCode(code);
});

test("every byte of Windows-1252 is the character of the standard", () => {
  expect([...decodeWindows1252(Buffer.from([...windowsCodes.keys()]))]).toEqual(windowsCodes);
});

function windows1252(text: string): Buffer {
  const bytes = new Map(windowsCodes.map((character, byte) => [character, byte]));
  return Buffer.from(Array.from(text, (character) => bytes.get(character) ?? Number.NaN));
}

const ways: readonly (readonly [string, (text: string) => Buffer, string])[] = [
  ["UTF-8", (text) => Buffer.from(text), "utf-8"],
  ["UTF-8 with its mark", (text) => Buffer.from(`\ufeff${text}`), "utf-8"],
  ["UTF-16LE", (text) => Buffer.from(text, "utf16le"), "utf-16le"],
  ["UTF-16LE with its mark", (text) => Buffer.from(`\ufeff${text}`, "utf16le"), "utf-16le"],
  ["UTF-16BE", utf16be, "utf-16be"],
  ["UTF-16BE with its mark", (text) => utf16be(`\ufeff${text}`), "utf-16be"],
  ["Windows-1252", windows1252, "windows-1252"],
];

test.each(ways)("the same text in %s gives the same rows", async (name, encode, encoding) => {
  const text = name === "Windows-1252" ? shared : beyond;
  const path = fileOf(encode(text));
  expect((await lookAt(path)).form).toEqual({ kind: "text", encoding, delimiter: ";", headerRow: 1 });
  expect(await cellsOf(path)).toEqual([
    ["1", "Stra\u00dfe-\u00e9", "caf\u00e9 \u00bd in\u00a0\u2013 120 \u00b0F"],
    ["2", "a;b", "\u201cquoted\u201d \u20ac"],
    ...(text === shared ? [] : [["3", "e\u0301-NFD", "5 \u03a9"]]),
  ]);
});

test("where the bytes do not decide, a person is asked, with the same piece of the file in both readings", async () => {
  const look = await lookAt(fileOf(windows1252(shared)));
  expect(look.reasons.encoding).toBe("Windows-1252: the text is not valid UTF-8.");
  const [question] = look.questions;
  expect(question).toMatchObject({ about: "encoding", question: "Which of the two readings is right?" });
  expect(question?.about === "encoding" && question.samples[0]?.windows1252).toContain("Stra\u00dfe");
  expect(question?.about === "encoding" && question.samples[0]?.utf8).toContain("Stra\ufffde");
  expect((await lookAt(fileOf(beyond))).questions).toEqual([]);
});

test("a file of two encodings loses no character: each line is read in its own", async () => {
  const lines = Array.from({ length: 9 }, (_, row) => `${row},caf\u00e9\n`).join("");
  const path = fileOf(Buffer.concat([Buffer.from(`Job,Note\n${lines}`), windows1252("9,na\u00efve\n")]));
  expect((await lookAt(path)).reasons.encoding).toBe(
    "UTF-8: most lines are valid; 1 line is not, and read as Windows-1252.",
  );
  expect((await cellsOf(path)).slice(-2)).toEqual([
    ["8", "caf\u00e9"],
    ["9", "na\u00efve"],
  ]);
});

test("a few lines of another kind in a long file of UTF-8 do not decide it", async () => {
  const path = fileOf(
    Buffer.concat([
      Buffer.from(`Job,Note\n${"1,caf\u00e9\n".repeat(60_000)}`),
      windows1252("2,na\u00efve\n".repeat(3)),
    ]),
  );
  expect((await lookAt(path)).reasons.encoding).toContain("UTF-8: most lines are valid; 3 lines are not");
});

test("a person's word overrules the guess", async () => {
  const path = fileOf("Job,Note\n1,caf\u00e9\n");
  expect(await cellsOf(path, { encoding: "windows-1252" })).toEqual([["1", "caf\u00c3\u00a9"]]);
});

// Half of a surrogate pair is no character; it becomes the sign for that, and its row stays.
test("a lone surrogate costs its character only", async () => {
  expect(await cellsOf(fileOf(Buffer.from("Job,Note\n1,a\ud800b\n", "utf16le")))).toEqual([["1", "a\ufffdb"]]);
});
