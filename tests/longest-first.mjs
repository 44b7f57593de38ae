import { BaseSequencer } from "vitest/node";
import { longFiles } from "./long-files.mjs";

/** Begins with the files that take longest, so that no worker is left with one of them when the others are through. */
export class LongestFirst extends BaseSequencer {
  async sort(files) {
    return (await super.sort(files)).toSorted((a, b) => rank(a) - rank(b));
  }
}

function rank({ moduleId }) {
  const place = longFiles.findIndex((name) => moduleId.endsWith(`/tests/${name}`));
  return place === -1 ? longFiles.length : place;
}
