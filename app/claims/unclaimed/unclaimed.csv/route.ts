import { todayIn } from "@/app/_clock/today";
import { csvResponse } from "@/app/_http/csv-response";
import { mayCall } from "@/app/_people/may-call";
import { readOnly } from "@/db/client";
import { loadUnclaimedList, type UnclaimedListRow } from "@/db/queries/money-unclaimed";
import { loadShop } from "@/db/queries/shop";
import { readUnclaimedAddress } from "../read-unclaimed-address";

export const dynamic = "force-dynamic";

const header =
  "job_number,serial,component,payer,policy,claim_number,class,missed_as,completed_on,last_day,currency,parts,labour,trip,diagnosis,handling,amount,missing,reason".split(
    ",",
  );

/** Every row of the view of the same address, amounts in whole units with two decimals. */
export async function GET(request: Request): Promise<Response> {
  const caller = await mayCall(request, "GET /claims/unclaimed/unclaimed.csv");
  if (!caller.ok) return caller.response;
  const { filter } = readUnclaimedAddress(Object.fromEntries(new URL(request.url).searchParams));
  const list = await readOnly(
    async (db) => {
      const today = todayIn((await loadShop(db)).timeZone);
      return await loadUnclaimedList(db, filter, today, { offset: 0, limit: undefined });
    },
    { timeoutSeconds: 60 },
  );
  return csvResponse("not-claimed-yet.csv", header, list.rows.map(csvRow));
}

function csvRow(row: UnclaimedListRow) {
  const { cents } = row;
  const money = [cents.parts, cents.labour, cents.trip, cents.diagnosis, cents.handling, cents.all];
  return [
    row.jobNumber,
    row.serial,
    row.component,
    row.payer,
    row.policyKey,
    row.claimNumber,
    row.leak,
    row.lostAs,
    row.completedOn,
    row.dueOn,
    row.currency,
    ...money.map((each) => each / 100),
    row.missing.join(" "),
    row.reason,
  ];
}
