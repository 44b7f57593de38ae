/** Whoever waits for a long reading: told how far it is, and able to end it. */
export interface RowWatch {
  readonly onProgress?: ((rows: number) => void) | undefined;
  /** @throws its reason, out of the reading */
  readonly signal?: AbortSignal | undefined;
}

const reportedEvery = 1_000;

/** To be called for each row that is read; it counts over all sheets of a workbook. */
export function rowCounter({ onProgress, signal }: RowWatch): () => void {
  let rows = 0;
  return () => {
    if (++rows % reportedEvery !== 0) return;
    signal?.throwIfAborted();
    onProgress?.(rows);
  };
}
