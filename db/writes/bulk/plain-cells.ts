// Tests of single cells, on bytes. Each lets through only what the ordinary parser is known to take as it stands, and
// may refuse anything: a row with a refused cell goes to that parser, which says what it is.

/** Whether the cell can be taken as it stands. A blank cell is not asked about. */
export type PlainTest = (bytes: Uint8Array, start: number, end: number) => boolean;

const longestText = 200;
const longestNote = 20_000;

/** A name or a number as printed: no space at either end, nothing but visible characters and spaces, no bytes of other alphabets at the ends. */
export const plainText: PlainTest = (bytes, start, end) => {
  if (end - start > longestText || !visible(bytes[start]) || !visible(bytes[end - 1])) return false;
  for (let at = start; at < end; at++) {
    const byte = bytes[at] ?? 0;
    if (byte < 0x20 || byte === 0x7f) return false;
  }
  return true;
};

/** ASCII with a letter or digit, so that it can also be normalised byte by byte; nothing that may be a number in scientific notation. */
export const plainIdentifier: PlainTest = (bytes, start, end) => {
  if (end - start > longestText || !visible(bytes[start]) || !visible(bytes[end - 1])) return false;
  let letters = false;
  let digits = false;
  for (let at = start; at < end; at++) {
    const byte = bytes[at] ?? 0;
    if (byte < 0x20 || byte > 0x7e) return false;
    if (byte >= 0x30 && byte <= 0x39) digits = true;
    else if (isLetter(byte) && byte !== 0x45 && byte !== 0x65) letters = true;
  }
  return letters || (digits && !hasE(bytes, start, end));
};

/** Some visible ASCII, so that it is not blank, and no NUL. */
export const plainNote: PlainTest = (bytes, start, end) => {
  if (end - start > longestNote) return false;
  let seen = false;
  for (let at = start; at < end; at++) {
    const byte = bytes[at] ?? 0;
    if (byte === 0) return false;
    if (visible(byte)) seen = true;
  }
  return seen;
};

/** A day of the calendar from 1900 on, written YYYY-MM-DD, not after `last`. */
export function plainDay(last: string): PlainTest {
  const latest = Number(last.replaceAll("-", ""));
  return (bytes, start, end) => {
    if (end - start !== 10 || bytes[start + 4] !== 0x2d || bytes[start + 7] !== 0x2d) return false;
    const year = 100 * two(bytes, start) + two(bytes, start + 2);
    const month = two(bytes, start + 5);
    const day = two(bytes, start + 8);
    if (!(year >= 1900 && month >= 1 && month <= 12 && day >= 1 && day <= 31)) return false;
    if (10_000 * year + 100 * month + day > latest) return false;
    return day <= 28 || day <= daysIn(year, month);
  };
}

/** Digits, at most six and none too many, that make a number from `least` up. */
export function plainWhole(least: 0 | 1): PlainTest {
  return (bytes, start, end) => {
    if (end - start > 6 || spareZero(bytes, start, end)) return false;
    for (let at = start; at < end; at++) if (!isDigit(bytes[at])) return false;
    return least === 0 || bytes[start] !== 0x30;
  };
}

/** Up to nine digits, and after a point one or two more. */
export const plainAmount: PlainTest = (bytes, start, end) => {
  let at = start;
  while (at < end && isDigit(bytes[at])) at++;
  if (at === start || at - start > 9 || spareZero(bytes, start, at)) return false;
  if (at === end) return true;
  if (bytes[at] !== 0x2e || end - at < 2 || end - at > 3) return false;
  for (at++; at < end; at++) if (!isDigit(bytes[at])) return false;
  return true;
};

/** One word of a list. */
export function plainWord(words: Iterable<string>): PlainTest {
  const byHash = new Map<number, Uint8Array>();
  for (const word of words) {
    const bytes = Buffer.from(word);
    const key = hash(bytes, 0, bytes.length);
    if (!byHash.has(key)) byHash.set(key, bytes); // two words of one hash: the second goes the ordinary way
  }
  return (bytes, start, end) => {
    const word = byHash.get(hash(bytes, start, end));
    if (word === undefined || word.length !== end - start) return false;
    for (let at = 0; at < word.length; at++) if (word[at] !== bytes[start + at]) return false;
    return true;
  };
}

function hash(bytes: Uint8Array, start: number, end: number): number {
  let sum = end - start;
  for (let at = start; at < end; at++) sum = (Math.imul(sum, 31) + (bytes[at] ?? 0)) | 0;
  return sum;
}

function visible(byte: number | undefined): boolean {
  return byte !== undefined && byte > 0x20 && byte < 0x7f;
}

function isLetter(byte: number): boolean {
  return (byte >= 0x41 && byte <= 0x5a) || (byte >= 0x61 && byte <= 0x7a);
}

function isDigit(byte: number | undefined): boolean {
  return byte !== undefined && byte >= 0x30 && byte <= 0x39;
}

function spareZero(bytes: Uint8Array, start: number, end: number): boolean {
  return end - start > 1 && bytes[start] === 0x30;
}

function hasE(bytes: Uint8Array, start: number, end: number): boolean {
  for (let at = start; at < end; at++) if (bytes[at] === 0x45 || bytes[at] === 0x65) return true;
  return false;
}

/** Two digits as a number; not a number where they are none. */
function two(bytes: Uint8Array, at: number): number {
  const [tens = 0, ones = 0] = [bytes[at], bytes[at + 1]];
  return tens >= 0x30 && tens <= 0x39 && ones >= 0x30 && ones <= 0x39 ? 10 * (tens - 0x30) + ones - 0x30 : Number.NaN;
}

function daysIn(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}
