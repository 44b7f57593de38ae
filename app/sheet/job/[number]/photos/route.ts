import { z } from "zod";
import { problem } from "@/app/_http/problem";
import { mayCallOnJob } from "@/app/_people/may-call";
import { largestPhotoBytes, mostAttachments } from "@/db/writes/photos/photo-limits";
import { reencodePhoto } from "@/db/writes/photos/reencode-photo";
import { keepPhoto } from "@/db/writes/sheets/keep-photo";
import { photoSubjectKeys } from "@/lib/domain/job";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly number: string }>;
}

const fields = z.object({
  id: z.uuid(),
  subject: z.enum(photoSubjectKeys),
  check: z
    .string()
    .max(60)
    .nullable()
    .transform((check) => check ?? undefined),
});
/** What a form adds around its file. */
const aroundFile = 100_000;

/** Takes one photo of a phone: always made anew as a JPEG without place or owner, and once however often it comes. */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  const jobNumber = decodeURIComponent((await params).number);
  const caller = await mayCallOnJob(request, "POST /sheet/job/[number]/photos", jobNumber);
  if (!caller.ok) return caller.response;
  if (Number(request.headers.get("content-length") ?? 0) > largestPhotoBytes + aroundFile)
    return problem(
      413,
      "Too large",
      `The photo is larger than ${largestPhotoBytes / 1_000_000} MB. Take a smaller one.`,
    );
  const form = await request.formData().catch(() => undefined);
  const file = form?.get("file");
  const read = fields.safeParse({ id: form?.get("id"), subject: form?.get("subject"), check: form?.get("check") });
  if (!read.success || !(file instanceof File))
    return problem(
      422,
      "The photo was not taken",
      "The form did not arrive whole. Open the sheet again and send it from there.",
    );
  if (file.size > largestPhotoBytes)
    return problem(
      413,
      "Too large",
      `The photo is larger than ${largestPhotoBytes / 1_000_000} MB. Take a smaller one.`,
    );
  const picture = await reencodePhoto(Buffer.from(await file.arrayBuffer()));
  if (!picture.ok) return problem(422, "The photo was not taken", `The photo ${picture.problem}. ${picture.fix}`);
  const kept = await keepPhoto({ jobNumber, ...read.data, photo: picture.photo });
  switch (kept.kind) {
    case "kept":
    case "here already":
      return Response.json({ said: kept.kind }, { headers: { "Cache-Control": "no-store" } });
    case "no such job":
      return problem(404, "Not found", `There is no job ${jobNumber}.`);
    case "job is full":
      return problem(422, "The job is full", `A job holds ${mostAttachments} photos.`);
  }
}
