import Link from "next/link";
import { type ClaimsAddress, claimsHref } from "../read-claims-address";

interface Props {
  readonly address: ClaimsAddress;
  readonly pages: number;
}

export function Pages({ address, pages }: Props) {
  if (pages <= 1) return null;
  const { page } = address;
  return (
    <nav aria-label="Pages of the list" className="cluster no-print">
      {page > 1 && (
        <Link href={claimsHref({ ...address, page: page - 1 })} rel="prev">
          Previous
        </Link>
      )}
      <span>
        Page {page} of {pages}
      </span>
      {page < pages && (
        <Link href={claimsHref({ ...address, page: page + 1 })} rel="next">
          Next
        </Link>
      )}
    </nav>
  );
}
