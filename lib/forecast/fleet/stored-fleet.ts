/** What a part's forecast knows of the machines that carry it: plain values, kept with the outlook. */
export type StoredFleet =
  | {
      readonly kind: "fleet";
      /** Undefined where machines of several makers take the part. */
      readonly maker: string | undefined;
      /** Components that run, at the start of the forecast. */
      readonly running: number;
      readonly failures: number;
      /** Mean shape of the lives that may be the true one: below 1 failures come early, above 1 by wear. */
      readonly shape: number;
      /** Failures and repairs with the part over the last two years, and pieces that such a repair takes. */
      readonly lastFailures: number;
      readonly took: number;
      readonly pieces: number;
      readonly comingYearly: number;
      /** Share of the machines that leaves in a year. */
      readonly leavingYearly: number;
      readonly seasonal: boolean;
      readonly signals: readonly StoredFleetSignal[];
    }
  | { readonly kind: "no-component" }
  | { readonly kind: "no-machines" }
  | { readonly kind: "too-few-failures"; readonly failures: number; readonly needed: number }
  | { readonly kind: "no-repairs" };

/** What was found about some of the machines, and is in what is expected of them. */
export interface StoredFleetSignal {
  readonly key: string;
  readonly observed: number;
  readonly expected: number;
}
