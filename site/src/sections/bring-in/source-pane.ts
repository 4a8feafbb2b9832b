// The statement as it came: its lines of text, or pictures of its pages with what was found marked on them.

import { html, nothing, svg, type TemplateResult } from 'lit/html.js';
import { say } from '../../say/wording';
import { piecesAt, type Review } from './review';
import { canReadPictures } from './source/picture-library';
import { around, type Box, type Piece, type Source } from './source/source';

/** The charge each line of the source belongs to, by line from 1. */
function keysByLine(r: Review): Map<number, number> {
  const keys = new Map<number, number>();
  for (const c of r.charges)
    for (const p of [...c.places, ...(c.amountPlace ? [c.amountPlace] : [])])
      if (!keys.has(p.line)) keys.set(p.line, c.key);
  return keys;
}

function asText(r: Review, lookedAt: number, lookBack: (key: number) => void): TemplateResult {
  const keys = keysByLine(r);
  return html`<div class="source-text" tabindex="0" role="region" aria-label=${say('page.bring.sourceText')}>
    <ol>
      ${r.source.lines.map((l, i) => {
        const key = keys.get(i + 1);
        return html`<li data-looked=${lookedAt === i + 1 ? 'yes' : nothing} data-found=${key !== undefined ? 'yes' : nothing} @click=${() => key !== undefined && lookBack(key)}>${l.text || '\u00a0'}</li>`;
      })}
    </ol>
  </div>`;
}

const rectangle = (b: Box, name: string, margin: number, click?: () => void) =>
  svg`<rect class=${name} x=${b.x - margin} y=${b.y - margin} width=${b.w + 2 * margin} height=${b.h + 2 * margin} @click=${click ?? nothing}></rect>`;

function page(r: Review, index: number, lookedAt: number, lookBack: (key: number) => void): TemplateResult {
  const { width, height, image } = r.source.pages[index]!;
  const margin = height / 400;
  const onPage = (line: number): boolean => r.source.lines[line - 1]?.page === index;
  const marks = r.charges.flatMap((c) => {
    const boxes = [...c.places, ...(c.amountPlace ? [c.amountPlace] : [])]
      .filter((p) => onPage(p.line))
      .flatMap((p) => piecesAt(r.source, p).map((piece) => piece.box));
    return boxes.length ? [{ key: c.key, box: around(boxes) }] : [];
  });
  const doubtful = r.charges
    .filter((c) => !c.checked && onPage(c.amountPlace?.line ?? c.places[0]?.line ?? 0))
    .flatMap((c) => c.doubtful);
  const looked = onPage(lookedAt) ? r.source.lines[lookedAt - 1]!.pieces.map((p) => p.box) : [];
  return html`<svg class="source-page" viewBox="0 0 ${width} ${height}" role="img" aria-label=${say('page.bring.pageOf', { page: index + 1, of: r.source.pages.length })}>
    ${image ? svg`<image href=${image} width=${width} height=${height}></image>` : nothing}
    ${marks.map((m) => rectangle(m.box, 'mark-found', margin, () => lookBack(m.key)))}
    ${doubtful.map((p) => rectangle(p.box, 'mark-doubt', margin))}
    ${looked.length ? svg`<g data-looked="yes">${rectangle(around(looked), 'mark-looked', margin * 3)}</g>` : nothing}
  </svg>`;
}

export const sourcePane = (r: Review, lookedAt: number, lookBack: (key: number) => void): TemplateResult =>
  r.source.pages.length === 0
    ? asText(r, lookedAt, lookBack)
    : html`<div class="source-pages" tabindex="0" role="region" aria-label=${say('page.bring.sourcePages')}>
        ${r.source.pages.map((_, i) => page(r, i, lookedAt, lookBack))}
      </div>`;

/** As much of a line as can be read on a phone: what is doubtful, and what stands beside it. */
function windowOn(line: Box, doubtful: readonly Box[]): { x: number; w: number } {
  const most = 15 * line.h;
  // A sum that stands alone is shown no larger than others, with what stands before it.
  if (line.w < most) return { x: Math.max(0, line.x + line.w - most), w: most };
  if (doubtful.length === 0) return line;
  const wanted = around(doubtful);
  const w = Math.max(most, wanted.w);
  const x = Math.min(line.x + line.w - w, Math.max(line.x, wanted.x + wanted.w / 2 - w / 2));
  return { x, w };
}

/** The strip of a page that holds a line, with the doubtful words framed. Nothing for a source without pictures. */
export function strip(
  source: Source,
  lineNumber: number,
  doubtful: readonly Piece[],
  label: string,
): TemplateResult | typeof nothing {
  const line = source.lines[lineNumber - 1];
  const page = line?.page === undefined ? undefined : source.pages[line.page];
  if (!canReadPictures || !line || !page?.image || line.pieces.length === 0) return nothing;
  const own = around(line.pieces.map((p) => p.box));
  const margin = own.h * 0.35;
  const boxes = doubtful.filter((p) => line.pieces.includes(p));
  const { x, w } = windowOn(
    own,
    boxes.map((p) => p.box),
  );
  return html`<svg class="strip-of-page" viewBox="${x - margin} ${own.y - margin} ${w + 2 * margin} ${own.h + 2 * margin}" role="img" aria-label=${label}>
    <image href=${page.image} width=${page.width} height=${page.height}></image>
    ${boxes.map((p) => rectangle(p.box, 'mark-doubt', own.h * 0.08))}
  </svg>`;
}
