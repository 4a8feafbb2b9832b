// The deposit as three bars to one scale: what was charged, what was kept and paid back, and what looks fair.
// The bands between them show where each part goes. The sums beside the picture are its text.

import { scaleLinear } from 'd3-scale';
import { area } from 'd3-shape';
import { html, nothing, svg, type TemplateResult } from 'lit/html.js';
import { cents } from '../case/cents';
import { say } from '../say/wording';
import type { Totals } from '../case/assessment';
import './pictures.css';

type Edge = readonly [left: number, right: number];

const barHeight = 14;
const bandHeight = 16;

/** A band whose edges move from one bar's part to the next one's. */
const band = area<{ y: number; edge: Edge }>()
  .x0((d) => d.edge[0])
  .x1((d) => d.edge[1])
  .y((d) => d.y);

export function flow(t: Totals): TemplateResult | typeof nothing {
  if (t.deposit === null || !t.shortfall) return nothing;
  const deposit = cents(t.deposit) + cents(t.interest.likely);
  const claimed = cents(t.claimed);
  if (deposit + claimed === 0) return nothing;
  const x = scaleLinear([0, Math.max(deposit, claimed)], [0, 100]).clamp(true);
  const paid = Math.min(cents(t.paidBack), deposit);
  const kept = x(deposit - paid);
  const all = x(deposit);
  const due = cents(t.shortfall.likely ?? t.shortfall.low);
  const fair = x(Math.max(0, deposit - paid - due));
  const [least, most] = [
    x(Math.max(0, deposit - paid - cents(t.shortfall.high))),
    x(Math.max(0, deposit - paid - cents(t.shortfall.low))),
  ];
  const y = [0, 1, 2].map((n) => n * (barHeight + bandHeight));
  const bar = (row: number, [a, b]: Edge, name: string) =>
    b - a > 0.01
      ? svg`<path class="flow-${name}" d="M${a} ${y[row]}H${b}v${barHeight}H${a}Z" vector-effect="non-scaling-stroke" />`
      : nothing;
  const between = (row: number, from: Edge, to: Edge) =>
    svg`<path class="flow-band" d=${band([
      { y: y[row]! + barHeight, edge: from },
      { y: y[row + 1]!, edge: to },
    ])} />`;
  return html`<figure class="flow" role="img" aria-label=${say('page.flow.label')}>
    <svg class="flow-bars" viewBox="0 0 100 ${y[2]! + barHeight}" preserveAspectRatio="none" aria-hidden="true" focusable="false">
      <defs>
        <pattern id="due-hatch" width="1.4" height="6" patternUnits="userSpaceOnUse">
          <path class="flow-hatch" d="M0 6L1.4 0" vector-effect="non-scaling-stroke" />
        </pattern>
      </defs>
      ${between(0, [0, Math.min(x(claimed), kept)], [0, Math.min(x(claimed), kept)])} ${between(1, [0, kept], [0, kept])}
      ${between(1, [kept, all], [kept, all])} ${bar(0, [0, x(claimed)], 'charged')} ${bar(1, [0, kept], 'kept')} ${bar(1, [kept, all], 'paid')}
      ${bar(2, [fair, kept], 'due')} ${bar(2, [kept, all], 'paid')}
      <path class="flow-fair" d="M0 ${y[2]}H${least}L${most} ${y[2]! + barHeight / 2}L${least} ${y[2]! + barHeight}H0Z" />
    </svg>
  </figure>`;
}

/** The small sample of a part of the picture that stands before its sum. */
export const swatch = (name: 'charged' | 'fair' | 'paid' | 'due'): TemplateResult =>
  html`<svg class="swatch" viewBox="0 0 14 14" width="14" height="14" aria-hidden="true" focusable="false">
    ${
      name === 'due'
        ? svg`<path class="flow-hollow" d="M.75 .75h12.5v12.5H.75Z" /><path class="flow-hatch" d="M1 13L6 1M6 13L11 1M10 13L13 6" />`
        : svg`<path class="flow-${name}" d="M.75 .75h12.5v12.5H.75Z" />`
    }
  </svg>`;
