import type { ExposureCells } from "@/lib/failures/cells";
import { minimalStandard } from "../minimal-standard";

/** Counts of an invented fleet: `size` windows, twice as many job cells; the same on every run. */
export function madeCells(size: number, until: number): ExposureCells {
  const next = minimalStandard(20260311);
  const windows = Array.from({ length: size }, () => {
    const inServiceOn = Math.floor(next() * (until - 500));
    return {
      modelId: 1 + Math.floor(next() * 20),
      inServiceOn,
      observedFrom: Math.max(inServiceOn, 2000),
      retiredOn: undefined,
      units: 1 + Math.floor(next() * 500),
    };
  });
  const jobs = windows.flatMap((place) =>
    ["pump", "board"].map((component) => ({
      modelId: place.modelId,
      component,
      symptom: undefined,
      cause: "component" as const,
      countedAs: "failure" as const,
      place,
      failedOn: place.observedFrom + Math.floor(next() * (until - place.observedFrom)),
      previousFailedOn: undefined,
      jobs: 1,
    })),
  );
  return {
    models: Array.from({ length: 20 }, (_, index) => ({
      modelId: index + 1,
      number: `M${index}`,
      maker: "One",
      productType: "dishwasher" as const,
    })),
    components: ["pump", "board"].map((key) => ({ key, name: key, productTypes: ["dishwasher" as const] })),
    symptoms: [],
    windows,
    jobs,
    repeated: [],
    unplaced: [],
  };
}
