// Files that claim to be pictures, made here by hand.
import { crc32, deflateSync } from "node:zlib";
import sharp from "sharp";

const marks = {
  IFD0: { Make: "Phonemaker", Model: "Phone 1", Software: "SerialXY12345" },
  IFD2: { DateTimeOriginal: "2025:03:05 10:15:00", BodySerialNumber: "SerialXY12345" },
  IFD3: { GPSLatitudeRef: "N", GPSLatitude: "41/1 52/1 0/1", GPSLongitudeRef: "W", GPSLongitude: "87/1 37/1 0/1" },
} as const;
const xmp = `<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description xmlns:dc="http://purl.org/dc/elements/1.1/" dc:creator="SerialXY12345"/></rdf:RDF></x:xmpmeta>`;

/** A picture with everything that cameras write beside the pixels; `offset` is what the camera knows of its zone. */
export async function marked(format: "jpeg" | "png" | "webp", offset?: string): Promise<Buffer> {
  const IFD2 = offset === undefined ? marks.IFD2 : { ...marks.IFD2, OffsetTimeOriginal: offset };
  const picture = sharp({ create: { width: 80, height: 60, channels: 3, background: "#3366aa" } });
  return await picture
    .withExif({ ...marks, IFD2 })
    .withXmp(xmp)
    .withIccProfile("p3")
    [format]()
    .toBuffer();
}

/** Fifty thousand points each way in a few bytes: whoever unpacks it needs 10 GB. */
export function pngBomb(): Buffer {
  const size = Buffer.alloc(8);
  size.writeUInt32BE(50_000, 0);
  size.writeUInt32BE(50_000, 4);
  const header = Buffer.concat([size, Buffer.from([8, 2, 0, 0, 0])]);
  return Buffer.concat([
    Buffer.from("\x89PNG\r\n\x1a\n", "latin1"),
    chunk("IHDR", header),
    chunk("IDAT", deflateSync(Buffer.alloc(150_001))),
    chunk("IEND", Buffer.alloc(0)),
  ]);
}

function chunk(name: string, content: Buffer): Buffer {
  const length = Buffer.alloc(4);
  length.writeUInt32BE(content.length);
  const body = Buffer.concat([Buffer.from(name, "latin1"), content]);
  const sum = Buffer.alloc(4);
  sum.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, sum]);
}

export function gifOfFrames(frames: number): Buffer {
  const head = Buffer.from("GIF89a\x01\x00\x01\x00\x80\x00\x00\x00\x00\x00\xff\xff\xff", "latin1");
  const frame = Buffer.from(
    "!\xf9\x04\x00\x01\x00\x00\x00,\x00\x00\x00\x00\x01\x00\x01\x00\x00\x02\x02D\x01\x00",
    "latin1",
  );
  return Buffer.concat([head, ...Array.from({ length: frames }, () => frame), Buffer.from(";")]);
}

export const script = "<script>steal()</script>";

/** A picture that is a web page as well, in a comment inside and after its end. */
export async function polyglot(): Promise<Buffer> {
  const picture = await marked("jpeg");
  const comment = Buffer.from(`<!doctype html>${script}<!--`, "latin1");
  const length = Buffer.alloc(2);
  length.writeUInt16BE(comment.length + 2);
  const inside = Buffer.concat([Buffer.from([0xff, 0xfe]), length, comment]);
  return Buffer.concat([picture.subarray(0, 2), inside, picture.subarray(2), Buffer.from(`-->${script}`)]);
}

export function svg(): Buffer {
  return Buffer.from(`<?xml version="1.0"?><!-- drawn --><svg xmlns="http://www.w3.org/2000/svg">${script}</svg>`);
}
