// What happens to a page between the desk it was written at and the phone: drawn on a canvas, in the browser. Each step takes and gives
// { width, height, data } (red, green, blue, alpha). Runs inside the page, so it holds everything it needs.

/** `base64`: a picture of a clean page. `steps`: [name, options]... Resolves to the worn picture as a data address. */
export async function worn([base64, steps, seed, type, quality]) {
  let state = seed >>> 0;
  const roll = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const canvasOf = (width, height) => Object.assign(document.createElement('canvas'), { width, height });
  const asCanvas = (p) => {
    const canvas = canvasOf(p.width, p.height);
    canvas.getContext('2d').putImageData(new ImageData(p.data, p.width, p.height), 0, 0);
    return canvas;
  };
  const asPicture = (canvas) => canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height);
  /** The picture drawn on a new sheet by `draw`. */
  const redrawn = (p, width, height, draw, behind = '#fff') => {
    const canvas = canvasOf(Math.round(width), Math.round(height));
    const context = canvas.getContext('2d');
    context.fillStyle = behind;
    context.fillRect(0, 0, canvas.width, canvas.height);
    context.imageSmoothingQuality = 'high';
    draw(context, asCanvas(p));
    return asPicture(canvas);
  };
  /** Every dot by `tone(value, x, y)`, grey. */
  const toned = (p, tone) => {
    for (let y = 0, i = 0; y < p.height; y++)
      for (let x = 0; x < p.width; x++, i += 4) for (let k = 0; k < 3; k++) p.data[i + k] = tone(p.data[i + k], x, y);
    return p;
  };
  const scaled = (p, sx, sy = sx) => redrawn(p, p.width * sx, p.height * sy, (c, from) => c.drawImage(from, 0, 0, p.width * sx, p.height * sy));
  /** From where in the picture each dot of the new sheet comes; outside it is the table. */
  const moved = (p, width, height, from, table = 90) => {
    const data = new Uint8ClampedArray(width * height * 4);
    for (let y = 0, i = 0; y < height; y++)
      for (let x = 0; x < width; x++, i += 4) {
        const [fx, fy] = from(x, y);
        const x0 = Math.floor(fx), y0 = Math.floor(fy);
        data[i + 3] = 255;
        if (x0 < 0 || y0 < 0 || x0 >= p.width - 1 || y0 >= p.height - 1) { data[i] = data[i + 1] = data[i + 2] = table; continue; }
        const rx = fx - x0, ry = fy - y0, at = (y0 * p.width + x0) * 4, below = at + p.width * 4;
        for (let k = 0; k < 3; k++)
          data[i + k] = (p.data[at + k] * (1 - rx) + p.data[at + 4 + k] * rx) * (1 - ry) + (p.data[below + k] * (1 - rx) + p.data[below + 4 + k] * rx) * ry;
      }
    return { width, height, data };
  };

  const ways = {
    /** Dots an inch, from the 96 the page is set for. */
    dpi: (p, { x, y = x }) => scaled(p, x / 96 / 3, y / 96 / 3),
    /** A line printer's pins: ink only in round dots on a grid. */
    pins: (p, { pitch = 4 }) => {
      const grid = scaled(p, 1 / pitch);
      return redrawn(p, p.width, p.height, (c) => {
        c.fillStyle = '#222';
        for (let y = 0; y < grid.height; y++)
          for (let x = 0; x < grid.width; x++)
            if (grid.data[(y * grid.width + x) * 4] < 190) { c.beginPath(); c.arc((x + 0.5) * pitch, (y + 0.5) * pitch, pitch * 0.48, 0, 7); c.fill(); }
      });
    },
    /** Each stroke of ink a little lighter or darker than the next, in patches. */
    ribbon: (p, { most = 0.5 }) => {
      const side = 42;
      const across = Math.ceil(p.width / side);
      const pale = Array.from({ length: across * Math.ceil(p.height / side) }, () => roll() * most);
      return toned(p, (v, x, y) => 255 - (255 - v) * (1 - pale[Math.floor(y / side) * across + Math.floor(x / side)]));
    },
    threshold: (p, { at = 140 }) => toned(p, (v) => (v < at ? 0 : 255)),
    specks: (p, { share, size = 1 }) => {
      for (let n = p.width * p.height * share; n > 0; n--) {
        const x = Math.floor(roll() * (p.width - size)), y = Math.floor(roll() * (p.height - size)), v = roll() < 0.7 ? 0 : 255;
        for (let dy = 0; dy < size; dy++) for (let dx = 0; dx < size; dx++) for (let k = 0; k < 3; k++) p.data[((y + dy) * p.width + x + dx) * 4 + k] = v;
      }
      return p;
    },
    noise: (p, { most }) => { for (let i = 0; i < p.data.length; i += 4) { const n = (roll() + roll() - 1) * most; for (let k = 0; k < 3; k++) p.data[i + k] += n; } return p; },
    /** Ink fades to `ink`, and towards one side more; the paper is `paper`. */
    fade: (p, { ink = 130, paper = 235, side = 0.3 }) => toned(p, (v, x) => { const t = ink + (paper - ink) * side * (x / p.width); return t + ((paper - t) * v) / 255; }),
    blur: (p, { by }) => redrawn(p, p.width, p.height, (c, from) => { c.filter = `blur(${by}px)`; c.drawImage(from, 0, 0); }),
    /** On a table, turned. */
    askew: (p, { degrees, table = '#6b5f52' }) => {
      const a = (degrees * Math.PI) / 180, cos = Math.abs(Math.cos(a)), sin = Math.abs(Math.sin(a));
      const w = p.width * cos + p.height * sin + 60, h = p.width * sin + p.height * cos + 60;
      return redrawn(p, w, h, (c, from) => { c.translate(w / 2, h / 2); c.rotate(a); c.drawImage(from, -p.width / 2, -p.height / 2); }, table);
    },
    /** Seen from one side: the far edge is `far` as long as the near one. */
    lean: (p, { far = 0.88, side = 'top' }) => {
      const { width: w, height: h } = p, k = 1 / far - 1;
      return moved(p, w, h, (x, y) => {
        const t = side === 'top' ? 1 - y / h : side === 'left' ? 1 - x / w : x / w;
        const s = 1 + k * t;
        return side === 'top' ? [w / 2 + (x - w / 2) * s, h - (h - y) * (1 + (k * t) / 2) * 1] : [side === 'left' ? w - (w - x) * (1 + (k * t) / 2) : x * (1 + (k * t) / 2), h / 2 + (y - h / 2) * s];
      });
    },
    /** Paper that does not lie flat: its lines wave. */
    wave: (p, { by = 8 }) => moved(p, p.width, p.height, (x, y) => [x, y + by * Math.sin((x / p.width) * 5 + (y / p.height) * 2)]),
    shadow: (p, { dark = 0.45, soft = 0.25 }) => toned(p, (v, x, y) => { const t = (x / p.width + (0.6 * y) / p.height - 0.7) / soft; return v * (1 - dark / (1 + Math.exp(-t * 3))); }),
    light: (p, { by }) => toned(p, (v) => v * by),
    /** A stain that hides what stands under it. */
    blot: (p, { x, y, w, h }) => redrawn(p, p.width, p.height, (c, from) => {
      c.drawImage(from, 0, 0);
      c.filter = `blur(${p.width / 400}px)`;
      c.fillStyle = '#555';
      for (let n = 0; n < 60; n++) { c.beginPath(); c.arc(p.width * (x + w * roll()), p.height * (y + h * roll()), p.height * h * (0.1 + 0.25 * roll()), 0, 7); c.fill(); }
    }),
    crease: (p, { at = 0.5, shift = 3 }) => {
      const line = p.height * at;
      const bent = moved(p, p.width, p.height, (x, y) => [x + (y > line ? shift : 0), y], 255);
      return toned(bent, (v, x, y) => { const d = Math.abs(y - line - x * 0.01); return d < 3 ? v * 0.62 + 20 : d < 14 ? v * (0.82 + 0.013 * d) : v; });
    },
  };

  const bitmap = await createImageBitmap(await (await fetch(`data:image/png;base64,${base64}`)).blob());
  const first = canvasOf(bitmap.width, bitmap.height);
  first.getContext('2d').drawImage(bitmap, 0, 0);
  let picture = asPicture(first);
  for (const [name, options = {}] of steps) picture = ways[name](picture, options);
  return asCanvas(picture).toDataURL(type, quality);
}
