import Link from "next/link";

interface Props {
  /** From 1. */
  readonly page: number;
  readonly pages: number;
  readonly hrefOf: (page: number) => string;
}

/** Below a list that comes in pages: the one before, the one after, and where one stands. Nothing where all is on one page. */
export function ListPages({ page, pages, hrefOf }: Props) {
  if (pages <= 1) return null;
  return (
    <nav aria-label="Pages of the list" className="cluster no-print">
      {page > 1 && (
        <Link href={hrefOf(page - 1)} rel="prev">
          Previous
        </Link>
      )}
      <span>
        Page {page} of {pages}
      </span>
      {page < pages && (
        <Link href={hrefOf(page + 1)} rel="next">
          Next
        </Link>
      )}
    </nav>
  );
}
