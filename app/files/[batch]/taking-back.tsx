import Link from "next/link";
import { Button } from "@/app/_ui/button";
import { Notice } from "@/app/_ui/notice";
import { Plate } from "@/app/_ui/plate";
import type { TakeBackResult } from "@/db/writes/take-back";
import { formatCounted } from "@/lib/format/format-count";
import { takeLoadBack } from "./actions";

interface Props {
  readonly batch: number;
  readonly preview: TakeBackResult;
}

/** The three lists before the act: what goes, what returns, and what stays and why. */
export function TakingBack({ batch, preview }: Props) {
  if (preview.kind !== "taken back") return <Notice status="note" title="This load has been taken back already" />;
  const lists = [
    { title: "Will be removed", rows: preview.removed },
    { title: "Will return to earlier values", rows: preview.returned },
    { title: "Will stay", rows: preview.staying },
  ];
  return (
    <Plate title="Taking this load back">
      {lists.map(({ title, rows }) => (
        <div key={title}>
          <h3>{title}</h3>
          {rows.length === 0 ? (
            <p>Nothing.</p>
          ) : (
            <ul>
              {rows.map((entry) => (
                <li key={`${entry.noun} ${entry.reason}`}>
                  {formatCounted(entry.rows, entry.noun)}
                  {entry.reason !== "" && `: ${entry.reason}`} ({entry.examples.join(", ")})
                </li>
              ))}
            </ul>
          )}
        </div>
      ))}
      <form action={takeLoadBack} className="cluster">
        <input type="hidden" name="batch" value={batch} />
        <Button>Take back load {String(batch)}</Button>
        <Link href={`/files/${batch}`}>Keep it</Link>
      </form>
    </Plate>
  );
}
