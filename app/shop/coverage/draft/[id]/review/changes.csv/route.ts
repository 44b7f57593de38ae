import { csvResponse } from "@/app/_http/csv-response";
import { mayCall } from "@/app/_people/may-call";
import { readOnly } from "@/db/client";
import { plainAmount } from "@/lib/format/plain-amount";
import { changeWords } from "../../../../altered-words";
import { loadReview } from "../load-review";

interface Context {
  readonly params: Promise<{ readonly id: string }>;
}

const header = ["job_number", "completed_on", "draft_claim", "change", "could_ask", "then", "currency"];

/** Every open decision that the draft would alter. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const caller = await mayCall(request, "GET /shop/coverage/draft/[id]/review/changes.csv");
  if (!caller.ok) return caller.response;
  const review = await readOnly(async (db) => loadReview(db, (await params).id));
  const altered = review?.impact?.altered ?? [];
  const rows = altered.map((one) => [
    one.jobNumber,
    one.completedOn,
    one.claimNumber ?? "",
    changeWords(one).join("; "),
    plainAmount(one.beforeCents),
    plainAmount(one.afterCents),
    one.currency,
  ]);
  return csvResponse("decisions-that-change.csv", header, rows, review?.impact === undefined ? 404 : 200);
}
