import { isNoRoom, noRoom } from "@/app/_http/no-room";
import { problem } from "@/app/_http/problem";
import { mayCallOnJob } from "@/app/_people/may-call";
import { addAttachment } from "@/db/writes/photos/add-attachment";
import { mostAttachments } from "@/db/writes/photos/photo-limits";
import { photoSubjects } from "@/lib/domain/job";
import { readPhotoForm } from "./read-photo-form";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly number: string }>;
}

/** Takes one photo or paper for the job. A page that asks for JSON is told what came of it; a plain form goes back to the job. */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  const jobNumber = decodeURIComponent((await params).number);
  const caller = await mayCallOnJob(request, "POST /jobs/[number]/photos", jobNumber);
  if (!caller.ok) return caller.response;
  const read = await readPhotoForm(request);
  if (!read.ok) return problem(read.status, "The photo was not taken in", read.sentence);
  const added = await addAttachment({ jobNumber, ...read.photo }).catch((error: unknown) => {
    if (isNoRoom(error)) return { kind: "no room" } as const;
    throw error;
  });
  switch (added.kind) {
    case "no room":
      return noRoom();
    case "no such job":
      return problem(404, "Not found", `There is no job ${jobNumber}.`);
    case "job is full":
      return problem(409, "The job is full", `A job holds ${mostAttachments} photos and papers. Take one off first.`);
    case "here already":
      return answer(request, jobNumber, `This photo is here already, as “${photoSubjects[added.subject]}”.`);
    case "added":
      return answer(request, jobNumber, "Added.");
  }
}

function answer(request: Request, jobNumber: string, said: string): Response {
  if (request.headers.get("accept")?.includes("application/json") === true) return Response.json({ said });
  const address = `/jobs/${encodeURIComponent(jobNumber)}#photos`;
  return new Response(null, { status: 303, headers: { Location: address } });
}
