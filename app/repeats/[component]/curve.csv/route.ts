import { todayIn } from "@/app/_clock/today";
import { readOnly } from "@/db/client";
import { loadShop } from "@/db/queries/shop";
import { csvText } from "@/lib/format/csv-text";
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
  return new Response(csvText(["age_days", "at_risk", "failed", "share_failed", "low", "high"], rows), {
    status: view.kind === "unknown-component" ? 404 : 200,
    headers: {
      "Content-Type": "text/csv; charset=utf-8",
      "Content-Disposition": `attachment; filename="failed-by-age-${component.replaceAll(/[^a-z0-9_]/g, "")}.csv"`,
      "Cache-Control": "no-store",
    },
  });
}
