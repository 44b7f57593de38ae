import { sql } from "drizzle-orm";
import { readOnly } from "@/db/client";
import { inTransaction } from "@/db/in-transaction";
import { migrateDatabase } from "@/db/migrate";
import { seedCatalogue } from "@/db/seed-catalogue";
import { recount } from "@/db/writes/recount";
import { loadDemoIfEmpty } from "../../app/commands/start/demo.mjs";
import { multiplyCompany } from "../bench/multiply-company";

interface Wanted {
  readonly url: string;
  readonly folder: string;
  readonly jobs: number;
  readonly signal: AbortSignal;
}

interface Company {
  readonly sentence: string;
  /** Pages that people of such a company ask for, some more often than others. */
  readonly addresses: readonly string[];
}

const photosAJob = 2;
const readingsAJob = 4;

/** The invented company, copied until it is as large as asked, with four readings and two rows of photos a job. */
export async function makeCompany({ url, folder, jobs, signal }: Wanted): Promise<Company> {
  await migrateDatabase(url);
  await seedCatalogue();
  await loadDemoIfEmpty({ url, isEmpty: () => true }, { folder, size: 0.1, signal });
  await multiplyCompany(jobs);
  await fillUp();
  await recount();
  return { sentence: await sentenceOf(), addresses: await addressesOf() };
}

async function fillUp(): Promise<void> {
  await inTransaction(
    async (tx) => {
      await tx.execute(sql`
        insert into readings (unit_id, job_id, number, check_key, mode, outcome, value, unit, power)
        select unit_id, job_id, 900 + n, 'drain_pump_winding', 'ohms', 'number', 12, 'Ω', 'off' from jobs j, generate_series(1, ${readingsAJob}::integer) n
        where n > (select count(*) from readings r where r.unit_id = j.unit_id and r.job_id = j.job_id)`);
      await tx.execute(sql`
        insert into attachments (unit_id, job_id, attachment_id, subject, caption, media_type, received_sha256, stored_sha256, stored_bytes, content)
        select unit_id, job_id, n, 'meter', '', 'image/jpeg', encode(sha256(c), 'hex'), encode(sha256(c), 'hex'), octet_length(c), c
        from jobs j, generate_series(1, ${photosAJob}::integer) n, (select decode(repeat('ff', 300), 'hex') as c) bytes
        where n > (select count(*) from attachments a where a.unit_id = j.unit_id and a.job_id = j.job_id) on conflict do nothing`);
      await tx.execute(sql`analyze`);
    },
    { timeoutSeconds: 3600 },
  );
}

async function sentenceOf(): Promise<string> {
  const [count] = await readOnly(
    (db) =>
      db.rows<{ jobs: number; units: number; readings: number; photos: number }>(sql`
        select (select count(*)::integer from jobs) as jobs, (select count(*)::integer from units) as units,
          (select count(*)::integer from readings) as readings, (select count(*)::integer from attachments) as photos`),
    { timeoutSeconds: 600 },
  );
  return `a company of ${count?.units} units, ${count?.jobs} jobs, ${count?.readings} readings, ${count?.photos} rows of photos`;
}

async function addressesOf(): Promise<readonly string[]> {
  return await readOnly(async (db) => {
    const some = async (statement: ReturnType<typeof sql>) =>
      (await db.rows<{ address: string }>(statement)).map(({ address }) => address);
    return [
      ...[
        "/today",
        "/today",
        "/jobs",
        "/jobs",
        "/jobs?page=40",
        "/jobs?component=drain_pump",
        "/units",
        "/claims",
        "/claims",
      ],
      ...[
        "/claims/unclaimed",
        "/parts",
        "/repeats",
        "/repeats",
        "/repeats?by=model",
        "/repeats/drain_pump",
        "/repeats/rates.csv",
      ],
      ...(await some(
        sql`select '/jobs/' || replace(job_number, '/', '%2F') as address from jobs order by job_id limit 8`,
      )),
      ...(await some(sql`select '/units/' || unit_id as address from units order by unit_id limit 4`)),
    ];
  });
}
