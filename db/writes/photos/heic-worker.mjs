import { parentPort, workerData } from "node:worker_threads";
import libheif from "libheif-js/wasm-bundle.js";

/** @param {{ received: Uint8Array, mostPixels: number }} given */
async function decode({ received, mostPixels }) {
  const images = new libheif.HeifDecoder().decode(received);
  const image = images.find((each) => each.is_primary()) ?? images[0];
  if (image === undefined) return { kind: "unreadable" };
  const width = image.get_width();
  const height = image.get_height();
  if (width * height > mostPixels) return { kind: "too many pixels", width, height };
  const canvas = { data: new Uint8ClampedArray(4 * width * height), width, height };
  const shown = await new Promise((resolve) => image.display(canvas, resolve));
  if (!shown) return { kind: "unreadable" };
  return { kind: "pixels", width, height, pixels: new Uint8Array(shown.data.buffer) };
}

decode(workerData).then(
  (decoded) => parentPort?.postMessage(decoded),
  () => parentPort?.postMessage({ kind: "unreadable" }),
);
