// A grey picture and the simple things done to it: brightening, parting ink from paper, turning.

export interface Grey {
  width: number;
  height: number;
  /** 0 black, 255 white; rows from top to bottom. */
  data: Uint8Array;
}

/** Ink: 1, paper: 0. */
export interface Ink {
  width: number;
  height: number;
  data: Uint8Array;
}

/** Grey from the red, green, blue and alpha of a canvas; what is transparent counts as white (luma of Rec. 601). */
export function greyOf(rgba: Uint8ClampedArray, width: number, height: number): Grey {
  const data = new Uint8Array(width * height);
  for (let i = 0, p = 0; i < data.length; i++, p += 4) {
    const luma = (rgba[p]! * 77 + rgba[p + 1]! * 151 + rgba[p + 2]! * 28) >> 8;
    const alpha = rgba[p + 3]!;
    data[i] = alpha === 255 ? luma : (luma * alpha + 255 * (255 - alpha)) / 255;
  }
  return { width, height, data };
}

/** How bright the paper is around each place: the light tones of each square of the picture, smoothed over its neighbours. */
function paperOf(grey: Grey, side: number): { columns: number; rows: number; tone: Float32Array } {
  const columns = Math.ceil(grey.width / side);
  const rows = Math.ceil(grey.height / side);
  const light = new Float32Array(columns * rows);
  const counts = new Uint32Array(256);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      counts.fill(0);
      const right = Math.min(grey.width, (column + 1) * side);
      const bottom = Math.min(grey.height, (row + 1) * side);
      for (let y = row * side; y < bottom; y++)
        for (let at = y * grey.width + column * side, end = y * grey.width + right; at < end; at++)
          counts[grey.data[at]!]!++;
      // The tone a tenth of the square is brighter than.
      let above = (right - column * side) * (bottom - row * side) * 0.1;
      let tone = 255;
      while (tone > 1 && (above -= counts[tone]!) > 0) tone--;
      light[row * columns + column] = tone;
    }
  const tone = new Float32Array(light.length);
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      let sum = 0;
      let n = 0;
      for (let y = Math.max(0, row - 1); y <= Math.min(rows - 1, row + 1); y++)
        for (let x = Math.max(0, column - 1); x <= Math.min(columns - 1, column + 1); x++, n++)
          sum += light[y * columns + x]!;
      tone[row * columns + column] = sum / n;
    }
  return { columns, rows, tone };
}

/** The picture as if evenly lit, its paper white: each tone as a share of the paper's around it. */
export function brightened(grey: Grey): Grey {
  const side = Math.max(8, Math.round(Math.min(grey.width, grey.height) / 48));
  const { columns, rows, tone } = paperOf(grey, side);
  const data = new Uint8Array(grey.data.length);
  for (let y = 0; y < grey.height; y++) {
    const fy = Math.min(rows - 1, Math.max(0, y / side - 0.5));
    const r0 = Math.floor(fy);
    const r1 = Math.min(rows - 1, r0 + 1);
    for (let x = 0; x < grey.width; x++) {
      const fx = Math.min(columns - 1, Math.max(0, x / side - 0.5));
      const c0 = Math.floor(fx);
      const c1 = Math.min(columns - 1, c0 + 1);
      const top = tone[r0 * columns + c0]! + (tone[r0 * columns + c1]! - tone[r0 * columns + c0]!) * (fx - c0);
      const low = tone[r1 * columns + c0]! + (tone[r1 * columns + c1]! - tone[r1 * columns + c0]!) * (fx - c0);
      const paper = top + (low - top) * (fy - r0);
      data[y * grey.width + x] = Math.min(255, (grey.data[y * grey.width + x]! * 250) / Math.max(24, paper));
    }
  }
  return stretched({ ...grey, data });
}

/** Spreads the tones so that the darkest ink is near black. A picture without ink stays as it is. */
function stretched(grey: Grey): Grey {
  const counts = new Uint32Array(256);
  for (const tone of grey.data) counts[tone]!++;
  let left = grey.data.length * 0.002;
  let dark = 0;
  while (dark < 255 && (left -= counts[dark]!) > 0) dark++;
  if (dark < 20 || dark > 215) return grey;
  const map = Uint8Array.from({ length: 256 }, (_, tone) =>
    Math.max(0, Math.min(255, ((tone - dark) * 245) / (250 - dark) + 8)),
  );
  return { ...grey, data: grey.data.map((tone) => map[tone]!) };
}

/** Along rows, then along columns, each tone becomes the largest (or smallest) within `reach`. */
function spread({ width, height, data }: Grey, reach: number, pick: (a: number, b: number) => number): Grey {
  const across = new Uint8Array(data.length);
  for (let y = 0; y < height; y++)
    for (let x = 0, row = y * width; x < width; x++) {
      let tone = data[row + x]!;
      for (let i = Math.max(0, x - reach), end = Math.min(width - 1, x + reach); i <= end; i++)
        tone = pick(tone, data[row + i]!);
      across[row + x] = tone;
    }
  const out = new Uint8Array(data.length);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      let tone = across[y * width + x]!;
      for (let i = Math.max(0, y - reach), end = Math.min(height - 1, y + reach); i <= end; i++)
        tone = pick(tone, across[i * width + x]!);
      out[y * width + x] = tone;
    }
  return { width, height, data: out };
}

/** The lightest tone of each square of `side` dots. */
function lightest(grey: Grey, side: number): Grey {
  const width = Math.ceil(grey.width / side);
  const height = Math.ceil(grey.height / side);
  const data = new Uint8Array(width * height);
  for (let y = 0; y < grey.height; y++) {
    const row = Math.floor(y / side) * width;
    for (let x = 0, at = y * grey.width; x < grey.width; x++, at++) {
      const to = row + Math.floor(x / side);
      if (grey.data[at]! > data[to]!) data[to] = grey.data[at]!;
    }
  }
  return { width, height, data };
}

/**
 * Takes away what lies behind letters, such as the shading of table rows: each tone as a share of what is left when strokes as thin as
 * those of letters are closed (a morphological closing). `height`: the usual height of a letter.
 */
export function evened(grey: Grey, height: number): Grey {
  const side = Math.max(1, Math.round(height / 8));
  const reach = Math.max(1, Math.round((0.4 * height) / side));
  const small = lightest(grey, side);
  const behind = spread(spread(small, reach, Math.max), reach, Math.min);
  const data = new Uint8Array(grey.data.length);
  for (let y = 0; y < grey.height; y++) {
    const row = Math.floor(y / side) * behind.width;
    for (let x = 0, at = y * grey.width; x < grey.width; x++, at++)
      data[at] = Math.min(255, (grey.data[at]! * 252) / Math.max(70, behind.data[row + Math.floor(x / side)]!));
  }
  return stretched({ ...grey, data });
}

/** A page so much of which is neither ink nor paper has a grain: noise of a camera, or of a faint print that was brightened. */
const grainyShare = 0.25;
/** As much of a page is surely ink where there is writing. */
const surelyInk = 0.002;

/** A grainy page with all that is nearer to paper than to ink as paper. Any other stays as it is. */
export function withoutGrain(grey: Grey): Grey {
  const tones = new Uint32Array(256);
  for (const tone of grey.data) tones[tone]!++;
  const below = (share: number): number => {
    let left = share * grey.data.length;
    return tones.findIndex((count) => (left -= count) <= 0);
  };
  const limit = (below(surelyInk) + 255) >> 1;
  const between = tones.slice(limit, 240).reduce((sum, count) => sum + count, 0);
  if (between < grainyShare * grey.data.length) return grey;
  return { ...grey, data: grey.data.map((tone) => (tone > limit ? 255 : tone)) };
}

/**
 * Ink is clearly darker than the paper around it: than `share` of the mean tone of a square about it
 * (Bradley and Roth, "Adaptive thresholding using the integral image", 2007).
 */
export function inkOf(grey: Grey, share = 0.8): Ink {
  const { width, height, data } = grey;
  const reach = Math.max(8, Math.round(Math.min(width, height) / 40));
  const columnSums = new Uint32Array(width);
  const ink = new Uint8Array(data.length);
  let top = 0;
  let bottom = 0; // rows [top, bottom) are in the column sums
  for (let y = 0; y < height; y++) {
    for (; bottom < Math.min(height, y + reach + 1); bottom++)
      for (let x = 0, at = bottom * width; x < width; x++, at++) columnSums[x]! += data[at]!;
    for (; top < y - reach; top++) for (let x = 0, at = top * width; x < width; x++, at++) columnSums[x]! -= data[at]!;
    let sum = 0;
    let left = 0;
    let right = 0;
    for (let x = 0; x < width; x++) {
      for (; right < Math.min(width, x + reach + 1); right++) sum += columnSums[right]!;
      for (; left < x - reach; left++) sum -= columnSums[left]!;
      const mean = sum / ((right - left) * (bottom - top));
      if (data[y * width + x]! < mean * share) ink[y * width + x] = 1;
    }
  }
  return { width, height, data: ink };
}

/** Each dot the mean of the nine around it: the dots of a line printer run together, and noise is less. */
export function softened({ width, height, data }: Grey): Grey {
  const out = data.slice();
  for (let y = 1; y + 1 < height; y++)
    for (let x = 1, at = y * width + 1; x + 1 < width; x++, at++) {
      const [up, low] = [at - width, at + width];
      out[at] =
        (data[up - 1]! +
          data[up]! +
          data[up + 1]! +
          data[at - 1]! +
          data[at]! +
          data[at + 1]! +
          data[low - 1]! +
          data[low]! +
          data[low + 1]!) /
        9;
    }
  return { width, height, data: out };
}

/** Twice as high. */
export function doubled({ width, height, data }: Grey): Grey {
  const out = new Uint8Array(2 * data.length);
  for (let y = 0; y < 2 * height; y++) {
    // The middles of the new rows lie a quarter above and below those of the old ones.
    const near = (y >> 1) * width;
    const far = Math.min(height - 1, Math.max(0, (y >> 1) + (y & 1 ? 1 : -1))) * width;
    for (let x = 0; x < width; x++) out[y * width + x] = 0.75 * data[near + x]! + 0.25 * data[far + x]!;
  }
  return { width, height: 2 * height, data: out };
}

/**
 * The picture turned against the clock by `degrees` and made `scale` times as large, on a sheet that holds all of it; what is new is white.
 * `fan`: how much steeper lines grow downward (turn.ts); they come out level.
 * Tones between dots are mixed from the four around (bilinear).
 */
export function turned(grey: Grey, degrees: number, scale: number, fan = 0): Grey {
  const turn = (degrees * Math.PI) / 180;
  const c = Math.abs(degrees % 90) < 1e-9 ? Math.round(Math.cos(turn)) : Math.cos(turn);
  const s = Math.abs(degrees % 90) < 1e-9 ? Math.round(Math.sin(turn)) : Math.sin(turn);
  const width = Math.max(1, Math.round((Math.abs(grey.width * c) + Math.abs(grey.height * s)) * scale));
  const height = Math.max(1, Math.round((Math.abs(grey.width * s) + Math.abs(grey.height * c)) * scale));
  const data = new Uint8Array(width * height).fill(255);
  const midX = (grey.width - 1) / 2;
  const midY = (grey.height - 1) / 2;
  for (let y = 0; y < height; y++) {
    const level = (y - (height - 1) / 2) / scale;
    for (let x = 0; x < width; x++) {
      const dx = (x - (width - 1) / 2) / scale;
      const dy = level * (1 + dx * fan);
      const fx = midX + dx * c - dy * s;
      const fy = midY + dx * s + dy * c;
      const x0 = Math.floor(fx);
      const y0 = Math.floor(fy);
      if (x0 < 0 || y0 < 0 || x0 >= grey.width || y0 >= grey.height) continue;
      const x1 = Math.min(grey.width - 1, x0 + 1);
      const y1 = Math.min(grey.height - 1, y0 + 1);
      const rx = fx - x0;
      const ry = fy - y0;
      const top = grey.data[y0 * grey.width + x0]! * (1 - rx) + grey.data[y0 * grey.width + x1]! * rx;
      const low = grey.data[y1 * grey.width + x0]! * (1 - rx) + grey.data[y1 * grey.width + x1]! * rx;
      data[y * width + x] = top * (1 - ry) + low * ry;
    }
  }
  return { width, height, data };
}
