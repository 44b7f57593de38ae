/** Advice about a photo before it is used: nothing is refused here, since a poor picture is better than none. */
export async function photoAdvice(file: File): Promise<readonly string[]> {
  try {
    const picture = await createImageBitmap(file);
    const small = Math.min(picture.width, picture.height) < 600;
    const grey = greyOf(picture);
    picture.close();
    return [
      ...(small ? ["The picture is small: letters may not be readable."] : []),
      ...(grey !== undefined && sharpness(grey) < blurred ? ["It looks blurred. Hold still and come closer."] : []),
      ...(grey !== undefined && glare(grey) > glaring ? ["Glare covers part of it. Tilt the phone."] : []),
    ];
  } catch {
    return ["This browser cannot show the picture; it is sent as it is."];
  }
}

interface Grey {
  readonly width: number;
  readonly height: number;
  readonly values: Float32Array;
}

/** Share of burnt-out points, and the spread of edges, at which a hint is given. Own choices, tried on a few pictures. */
const glaring = 0.12;
const blurred = 12;
const side = 256;

function greyOf(picture: ImageBitmap): Grey | undefined {
  const scale = side / Math.max(picture.width, picture.height);
  const width = Math.max(3, Math.round(picture.width * scale));
  const height = Math.max(3, Math.round(picture.height * scale));
  const canvas = document.createElement("canvas");
  canvas.width = width;
  canvas.height = height;
  const pen = canvas.getContext("2d");
  if (pen === null) return undefined;
  pen.drawImage(picture, 0, 0, width, height);
  const { data } = pen.getImageData(0, 0, width, height);
  const values = new Float32Array(width * height);
  for (let i = 0; i < values.length; i++)
    values[i] = 0.299 * (data[4 * i] ?? 0) + 0.587 * (data[4 * i + 1] ?? 0) + 0.114 * (data[4 * i + 2] ?? 0);
  return { width, height, values };
}

/** Variance of the second differences: a picture without edges has little. */
function sharpness({ width, height, values }: Grey): number {
  let sum = 0;
  let squares = 0;
  let count = 0;
  for (let y = 1; y < height - 1; y++)
    for (let x = 1; x < width - 1; x++) {
      const at = y * width + x;
      const around =
        (values[at - 1] ?? 0) + (values[at + 1] ?? 0) + (values[at - width] ?? 0) + (values[at + width] ?? 0);
      const edge = around - 4 * (values[at] ?? 0);
      sum += edge;
      squares += edge * edge;
      count++;
    }
  return count === 0 ? 0 : squares / count - (sum / count) ** 2;
}

function glare({ values }: Grey): number {
  return values.reduce((sum, value) => sum + (value > 250 ? 1 : 0), 0) / values.length;
}
