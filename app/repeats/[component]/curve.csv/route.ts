import { todayIn } from "@/app/_clock/today";
import { csvResponse } from "@/app/_http/csv-response";
import { readOnly } from "@/db/client";
import { loadShop } from "@/db/queries/shop";
import { loadComponentLife } from "../../load-component-life";

export const dynamic = "force-dynamic";

interface Context {
  readonly params: Promise<{ readonly component: string }>;
}

/** The steps of the curve as a file: every age at which something failed. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { component } = await params;
  const values = Object.fromEntries(new URL(request.url).searchParams);
  const view = await readOnly(async (db) =>
    loadComponentLife(db, component, values, todayIn((await loadShop(db)).timeZone)),
  );
  const steps = view.kind === "life" && view.life.curve.kind === "curve" ? view.life.curve.steps : [];
  const rows = steps.map(({ age, atRisk, events, survival, limits }) => [
    age,
    atRisk,
    events,
    1 - survival,
    limits.kind === "limits" ? 1 - limits.high : undefined,
    limits.kind === "limits" ? 1 - limits.low : undefined,
  ]);
  const name = `failed-by-age-${component.replaceAll(/[^a-z0-9_]/g, "")}.csv`;
  const header = ["age_days", "at_risk", "failed", "share_failed", "low", "high"];
  return csvResponse(name, header, rows, view.kind === "unknown-component" ? 404 : 200);
}
