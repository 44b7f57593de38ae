import type { FileKind } from "@/lib/intake/file-kinds";
import type { StagedKind } from "../staging/staged-kind";
import { componentsKind } from "./components";
import { contractsKind } from "./contracts";
import { factsOfUnitsKind } from "./facts-of-units";
import { jobsKind } from "./jobs";
import { partLinesKind } from "./part-lines";
import { partsKind } from "./parts";
import { photosKind } from "./photos";
import { policiesKind } from "./policies";
import { rangesKind } from "./ranges";
import { readingsKind } from "./readings";
import { shopKind } from "./shop";
import { unitsKind } from "./units";

const kinds: Readonly<Record<FileKind, StagedKind>> = {
  shop: shopKind,
  components: componentsKind,
  units: unitsKind,
  jobs: jobsKind,
  "part-lines": partLinesKind,
  readings: readingsKind,
  ranges: rangesKind,
  policies: policiesKind,
  photos: photosKind,
  parts: partsKind,
  contracts: contractsKind,
  "unit-facts": factsOfUnitsKind,
};

export function stagedKindOf(kind: FileKind): StagedKind {
  return kinds[kind];
}
