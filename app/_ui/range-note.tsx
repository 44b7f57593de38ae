import { HowCounted } from "./how-counted";

interface Props {
  /** Two-sided level of the ranges on the page, in (0, 1). */
  readonly level: number;
}

/** What a range means, once per page. */
export function RangeNote({ level }: Props) {
  return (
    <p>
      If we could rerun this many times, <HowCounted of="range">ranges</HowCounted> built this way would hold the true
      rate {Math.round(100 * level)} times in 100.
    </p>
  );
}
