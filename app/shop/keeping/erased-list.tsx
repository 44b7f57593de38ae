import type { Erased } from "@/db/erasure/erase-customer";
import { formatCounted } from "@/lib/format/format-count";

/** Where the customer stands or stood, and what is kept all the same with its reason. */
export function ErasedList({ erased, kept, jobs }: Pick<Erased, "erased" | "kept" | "jobs">) {
  return (
    <>
      <p>In {formatCounted(jobs.length, "job")} and wherever else it stands:</p>
      <ul>
        {erased.length === 0 && <li>nothing was found</li>}
        {erased.map(({ place, cells }) => (
          <li key={place}>
            <code>{place}</code>: {formatCounted(cells, "cell")}
          </li>
        ))}
      </ul>
      {kept.length > 0 && <p>Kept all the same:</p>}
      <ul>
        {kept.map(({ what, why }) => (
          <li key={`${what} ${why}`}>
            {what}: {why}
          </li>
        ))}
      </ul>
    </>
  );
}
