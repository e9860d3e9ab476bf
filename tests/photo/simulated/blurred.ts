import type { LinearImage } from './render-scene.ts';

/** Red, green and blue of pixels, row by row. */
export type Planes = Float32Array;

/** An image with each point spread out as a bell of so many pixels (standard deviation); beyond its edge it goes on as there. */
export function blurred({ width, height, data }: LinearImage, deviation: number): Planes {
  const reach = Math.max(1, Math.ceil(2.6 * deviation));
  const kernel = Array.from({ length: reach + 1 }, (_, at) => Math.exp(-((at / deviation) ** 2) / 2));
  const sum = kernel.reduce((all, each, at) => all + (at === 0 ? each : 2 * each), 0);
  const weights = Float32Array.from(kernel, (each) => each / sum);
  const across = alongRows(data, width, height, weights);
  return alongColumns(across, width, height, weights);
}

function alongRows(data: Planes, width: number, height: number, weights: Float32Array): Planes {
  const out = new Float32Array(data.length);
  const reach = weights.length - 1;
  const middle = weights[0]!;
  for (let row = 0; row < height; row++) {
    const start = 3 * width * row;
    for (let column = 0; column < width; column++) {
      const isInside = column >= reach && column < width - reach;
      for (let channel = 0; channel < 3; channel++) {
        const at = start + 3 * column + channel;
        let sum = middle * data[at]!;
        for (let step = 1; step <= reach; step++) {
          const before = isInside ? at - 3 * step : start + 3 * Math.max(0, column - step) + channel;
          const after = isInside ? at + 3 * step : start + 3 * Math.min(width - 1, column + step) + channel;
          sum += weights[step]! * (data[before]! + data[after]!);
        }
        out[at] = sum;
      }
    }
  }
  return out;
}

function alongColumns(data: Planes, width: number, height: number, weights: Float32Array): Planes {
  const out = new Float32Array(data.length);
  const line = 3 * width;
  for (let row = 0; row < height; row++) {
    for (let step = 0; step < weights.length; step++) {
      const weight = weights[step]!;
      const above = line * Math.max(0, row - step);
      const below = line * Math.min(height - 1, row + step);
      const at = line * row;
      if (step === 0) for (let x = 0; x < line; x++) out[at + x] = weight * data[at + x]!;
      else for (let x = 0; x < line; x++) out[at + x] = out[at + x]! + weight * (data[above + x]! + data[below + x]!);
    }
  }
  return out;
}
