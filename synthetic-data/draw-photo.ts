import sharp from "sharp";
import type { PhotoSubject } from "@/lib/domain/job";
import { picture } from "./drawing";
import { type PhotoFacts, photoScene } from "./photo-scenes";

/** The picture as JPEG bytes. It says of itself that it is drawn. */
export async function drawPhoto(subject: PhotoSubject, facts: PhotoFacts, jobNumber: string): Promise<Buffer> {
  const drawing = picture(photoScene(subject, facts), jobNumber);
  return await sharp(Buffer.from(drawing)).jpeg({ quality: 82, chromaSubsampling: "4:4:4" }).toBuffer();
}
