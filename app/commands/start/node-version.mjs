import process from "node:process";
import { Refusal } from "./say.mjs";

const oldest = [20, 19];

export function refuseOldNode(version = process.versions.node) {
  const [major, minor] = version.split(".").map(Number);
  if (major > oldest[0] || (major === oldest[0] && minor >= oldest[1])) return;
  throw new Refusal(
    `Node.js ${oldest.join(".")} or newer is needed, and this is ${version}. Install a newer one from https://nodejs.org.`,
  );
}
