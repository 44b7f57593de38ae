import type { Day } from "@/lib/calendar/day";
import type { Currency } from "@/lib/domain/money";

/** Words that rows may use. They are data, since a company adds components of its own. */
export interface Catalogue {
  readonly productTypes: ReadonlySet<string>;
  readonly components: ReadonlySet<string>;
  readonly symptoms: ReadonlySet<string>;
  readonly failureModes: ReadonlySet<string>;
  /** Each check with its modes and, for observations, the words that its finding may be. */
  readonly checks: ReadonlyMap<string, KnownCheck>;
}

export interface KnownCheck {
  readonly modes: readonly string[];
  readonly findings: readonly string[];
}

/** What a row is read against. */
export interface IntakeSetting {
  readonly catalogue: Catalogue;
  /** The shop's, for rows that name none. */
  readonly currency: Currency;
  /** Nothing that is on record can have happened after it. */
  readonly today: Day;
}
