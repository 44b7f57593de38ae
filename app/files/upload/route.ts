import { isNoRoom, noRoom } from "@/app/_http/no-room";
import { problem } from "@/app/_http/problem";
import { mayCall } from "@/app/_people/may-call";
import { startDraft } from "../_draft/open-draft";
import { addressOf } from "../_draft/where-it-stands";
import { beginTask } from "../_work/begin-task";
import { dropUpload, keepUpload, mostBytes, TooLarge } from "../uploads";

export const dynamic = "force-dynamic";

/** Takes a file as the raw body; its name comes in `?name=`. Answers with the address where it waits and is looked at. */
export async function POST(request: Request): Promise<Response> {
  const caller = await mayCall(request, "POST /files/upload");
  if (!caller.ok) return caller.response;
  const name = new URL(request.url).searchParams.get("name")?.trim().slice(0, 200) ?? "";
  if (name === "")
    return problem(400, "No file name", "Send the file's name in the address: /files/upload?name=jobs.csv");
  if (request.body === null) return problem(400, "No file", "The request holds no file. Choose the file again.");
  try {
    const upload = await keepUpload(request.body, name.replaceAll(/\p{Cc}/gu, " "));
    const promised = request.headers.get("content-length");
    if (promised !== null && Number(promised) !== upload.bytes) {
      await dropUpload(upload.id);
      return problem(400, "The file arrived cut short", `${upload.bytes} of ${promised} bytes arrived. Send it again.`);
    }
    await startDraft({
      draftId: upload.id,
      fileName: upload.fileName,
      fileBytes: upload.bytes,
      fileSha256: upload.sha256,
    });
    beginTask(upload.id, "look");
    return Response.json({ address: addressOf(upload.id) }, { status: 201 });
  } catch (error) {
    if (error instanceof TooLarge)
      return problem(
        413,
        "The file is too large",
        `A file may have ${mostBytes / 1024 ** 3} GB here. Use npm run load for larger ones.`,
      );
    if (isNoRoom(error)) return noRoom();
    throw error;
  }
}
