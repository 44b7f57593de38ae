import { mkdirSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { sql } from "drizzle-orm";
import sharp from "sharp";
import { afterAll, beforeEach, expect, test } from "vitest";
import { readOnly } from "@/db/client";
import { closeDatabase } from "@/db/close-database";
import { reencodePhoto } from "@/db/writes/photos/reencode-photo";
import { csv, fileFolder, job, shopDocument, startAfresh } from "./intake-files";

const files = fileFolder();
const photos = join(files.folder, "photos");
mkdirSync(photos);

beforeEach(async () => {
  await startAfresh();
  await files.load(JSON.stringify(shopDocument));
  await files.load(csv([job("J1", "A1", { product_type: "front_load_washer" })]));
});
afterAll(async () => {
  files.remove();
  await closeDatabase();
});

/** Wide, marked as lying on its side, and carrying what cameras write beside the pixels. */
function picture(width: number, height: number): Promise<Buffer> {
  return sharp({ create: { width, height, channels: 3, background: "#336699" } })
    .withExif({ IFD0: { Make: "Camera", Orientation: "6" } })
    .withMetadata({ orientation: 6 })
    .jpeg()
    .toBuffer();
}

test("a photo is kept upright, small enough and without anything beside its pixels", async () => {
  writeFileSync(join(photos, "1.jpg"), await picture(3000, 1500));
  const list = csv([
    {
      job_number: "J1",
      subject: "plate",
      file: "photos/1.jpg",
      caption: "Plate",
      taken_at: "2023-05-03T09:00:00-07:00",
    },
  ]);
  expect(await files.load(list)).toMatchObject({ kind: "added", report: { rowsNew: 1 } });
  const [stored] = await readOnly((db) =>
    db.rows<{ content: Buffer; width: number; height: number }>(sql`select content, width, height from attachments`),
  );
  expect([stored?.width, stored?.height]).toEqual([1000, 2000]);
  const found = await sharp(stored?.content).metadata();
  expect([found.format, found.width, found.height, found.exif, found.orientation]).toEqual([
    "jpeg",
    1000,
    2000,
    undefined,
    undefined,
  ]);
});

test("the same list is the same load only with the same pictures; the same picture is the same photo", async () => {
  const list = csv([{ job_number: "J1", subject: "plate", file: "photos/1.jpg", caption: "Plate" }]);
  writeFileSync(join(photos, "1.jpg"), await picture(40, 20));
  expect(await files.load(list)).toMatchObject({ kind: "added", report: { rowsNew: 1 } });
  expect(await files.load(list)).toMatchObject({ kind: "loaded before" });
  expect(await files.load(list.replace("Plate", "Rating plate"))).toMatchObject({
    kind: "added",
    report: { rowsNew: 0, rowsChanged: 1 },
  });
  writeFileSync(join(photos, "1.jpg"), await picture(50, 20));
  expect(await files.load(list)).toMatchObject({ kind: "added", report: { rowsNew: 1 } });
});

test("what is not a picture below the folder is refused with its row", async () => {
  writeFileSync(join(photos, "text.jpg"), "<svg xmlns='http://www.w3.org/2000/svg'><script/></svg>");
  writeFileSync(join(photos, "cut.jpg"), (await picture(400, 400)).subarray(0, 900));
  writeFileSync(
    join(photos, "moving.jpg"),
    await sharp(await picture(20, 20))
      .gif()
      .toBuffer(),
  );
  symlinkSync("/etc/hostname", join(photos, "link.jpg"));
  const names = [
    "photos/none.jpg",
    "photos/text.jpg",
    "photos/cut.jpg",
    "photos/link.jpg",
    "photos",
    "photos/moving.jpg",
  ];
  const result = await files.load(csv(names.map((file) => ({ job_number: "J1", subject: "plate", file }))));
  if (result.kind !== "refused") throw new Error(result.kind);
  expect(result.report.problems.map(({ row, problem }) => `${row} ${problem}`)).toEqual([
    "2 is not there",
    "3 is an SVG drawing, which is a program as much as a picture",
    "4 begins as a JPEG picture but cannot be read to its end",
    "5 leads out of the folder of the CSV",
    "6 is not a file",
    "7 is a GIF animation",
  ]);
});

test("a picture of too many pixels or bytes is refused before it is unpacked", async () => {
  const wide = await sharp({ create: { width: 9000, height: 6000, channels: 3, background: "#000" } })
    .png()
    .toBuffer();
  expect(await reencodePhoto(wide)).toMatchObject({
    ok: false,
    problem: "has 9000 × 6000 pixels, more than the 50 million that are read",
  });
  expect(await reencodePhoto(Buffer.alloc(15_000_001))).toMatchObject({ ok: false, problem: "is larger than 15 MB" });
  expect(await reencodePhoto(Buffer.alloc(0))).toMatchObject({ ok: false, problem: "is empty" });
});
