import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import sharp from "sharp";
import { describe, expect, test } from "vitest";
import { readPaper } from "@/db/writes/photos/read-paper";
import { reencodePhoto } from "@/db/writes/photos/reencode-photo";
import { heicSample } from "./photos-heic-sample";
import { gifOfFrames, marked, pngBomb, polyglot, script, svg } from "./photos-hostile";

async function refusal(bytes: Buffer): Promise<string> {
  const read = await reencodePhoto(bytes);
  if (read.ok) throw new Error("it was taken for a picture");
  return `${read.problem}. ${read.fix}`;
}

async function kept(bytes: Buffer) {
  const read = await reencodePhoto(bytes);
  if (!read.ok) throw new Error(read.problem);
  return read.photo;
}

const whole = await marked("jpeg");

const notPictures: readonly (readonly [string, Buffer, RegExp])[] = [
  ["nothing", Buffer.alloc(0), /is empty/],
  ["one byte over 15 MB", Buffer.concat([whole, Buffer.alloc(15_000_001 - whole.length)]), /larger than 15 MB/],
  ["a PNG of 50,000 by 50,000 points", pngBomb(), /50000 × 50000 pixels, more than the 50 million/],
  ["a GIF of 10,000 frames", gifOfFrames(10_000), /a GIF animation/],
  ["an SVG with a script", svg(), /an SVG drawing/],
  ["a web page", Buffer.from(`\n<!DOCTYPE html><p>${script}`), /a web page/],
  ["a PDF", Buffer.from("%PDF-1.7\n"), /a PDF document.*proof of purchase/],
  ["a program called plate.jpg", Buffer.from("MZ\x90\0\x03".padEnd(400, "\0"), "latin1"), /Its name doesn’t count/],
  ["an archive", Buffer.from("PK\x03\x04".padEnd(64, "\0"), "latin1"), /an archive/],
  ["a HEIC cut short", heicSample.subarray(0, 700), /HEIC/],
];

describe("what is no picture is refused, each in its own words and soon", () => {
  test.each(notPictures)("%s", async (_, bytes, words) => {
    const before = process.memoryUsage().rss;
    expect(await refusal(bytes)).toMatch(words);
    expect(process.memoryUsage().rss - before).toBeLessThan(200_000_000);
  });

  test("no two of them are answered alike", async () => {
    const answers = await Promise.all(notPictures.map(([, bytes]) => refusal(bytes)));
    expect(new Set(answers).size).toBe(answers.length);
  });

  test("a JPEG cut short anywhere is not taken for a whole one", async () => {
    const noisy = await sharp({
      create: { width: 400, height: 300, channels: 3, background: "#808080", noise: { type: "gaussian", sigma: 40 } },
    })
      .jpeg()
      .toBuffer();
    for (const share of [0.01, 0.1, 0.5, 0.9, 0.99])
      expect(await refusal(noisy.subarray(0, Math.ceil(noisy.length * share)))).toMatch(/cannot be read to its end/);
    expect((await kept(noisy)).width).toBe(400);
  });
});

const pictures: readonly (readonly [string, () => Promise<Buffer>])[] = [
  ["JPEG", () => marked("jpeg")],
  ["PNG", () => marked("png")],
  ["WebP", () => marked("webp")],
  ["HEIC", async () => heicSample],
  ["a picture that is a web page too", polyglot],
];

describe("nothing but pixels is kept", () => {
  test.each(pictures)("%s", async (_, bytes) => {
    const received = await bytes();
    const { content } = await kept(received);
    const { format, exif, xmp, icc, iptc, tifftagPhotoshop, comments } = await sharp(content).metadata();
    expect(format).toBe("jpeg");
    expect([exif, xmp, icc, iptc, tifftagPhotoshop, comments].filter((part) => part !== undefined)).toEqual([]);
    const text = content.toString("latin1");
    for (const word of ["Phonemaker", "SerialXY12345", "<script", "adobe", "Exif"]) expect(text).not.toContain(word);
    expect(content.equals(received)).toBe(false);
  });

  test.skipIf(spawnSync("exiftool", ["-ver"]).status !== 0)(
    "another program finds no tag that says anything",
    async () => {
      const folder = mkdtempSync(join(tmpdir(), "ohmsworth-photo-"));
      try {
        for (const [name, bytes] of pictures) {
          const path = join(folder, "kept.jpg");
          writeFileSync(path, (await kept(await bytes())).content);
          // The groups left out are what it says of the file on disk and of the encoding itself.
          const found = execFileSync("exiftool", [
            "-j",
            "-G1",
            "--System:all",
            "--File:all",
            "--ExifTool:all",
            "--Composite:all",
            "--JFIF:all",
            path,
          ]);
          expect(JSON.parse(found.toString()), name).toEqual([{ SourceFile: path }]);
        }
      } finally {
        rmSync(folder, { recursive: true, force: true });
      }
    },
  );

  test("the picture is the one that was sent", async () => {
    const { content, width, height } = await kept(heicSample);
    expect([width, height]).toEqual([64, 48]);
    const { data } = await sharp(content).raw().toBuffer({ resolveWithObject: true });
    const corner = (x: number, y: number) => data.subarray(3 * (64 * y + x), 3 * (64 * y + x) + 3);
    const [red = 0, , blue = 0] = corner(8, 8);
    expect(red).toBeGreaterThan(3 * blue);
    const [otherRed = 0, , otherBlue = 0] = corner(50, 38);
    expect(otherBlue).toBeGreaterThan(2 * otherRed);
  });

  test("the time stays, with the zone where the camera knew it", async () => {
    expect((await kept(await marked("jpeg"))).taken).toEqual({ clock: "2025-03-05T10:15:00", offset: undefined });
    expect((await kept(await marked("webp", "+05:30"))).taken).toEqual({
      clock: "2025-03-05T10:15:00",
      offset: "+05:30",
    });
    expect((await kept(heicSample)).taken).toEqual({ clock: "2025-03-05T10:15:00", offset: "-06:00" });
    expect((await kept(await sharp(whole).jpeg().toBuffer())).taken).toBeUndefined();
  });
});

const paper = (inside: string) => Buffer.from(`%PDF-1.7\n${inside}\ntrailer\n%%EOF\n`, "latin1");

test("a paper that acts when it is opened, is locked, or lacks its end is refused; a plain one is kept as it came", () => {
  const plain = paper("1 0 obj << /Type /Catalog >> endobj");
  const read = readPaper(plain);
  expect(read.ok && read.paper.content.equals(plain)).toBe(true);
  for (const name of ["/JavaScript", "/JS", "/Launch", "/EmbeddedFile", "/Encrypt"])
    expect(readPaper(paper(`<< ${name} 3 0 R >>`)).ok).toBe(false);
  expect(readPaper(plain.subarray(0, 20)).ok).toBe(false);
  expect(readPaper(whole).ok).toBe(false);
});
