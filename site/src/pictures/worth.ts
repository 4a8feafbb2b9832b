// What a thing was worth over its life, as a line that wears thin: used up before the tenancy, used up during it, and what was left.

import { scaleTime } from 'd3-scale';
import { area } from 'd3-shape';
import { html, nothing, svg, type TemplateResult } from 'lit/html.js';
import { shortDay } from '../say/show';
import { say } from '../say/wording';
import type { Days, Depreciation } from '../case/assessment';
import './pictures.css';

const noon = (iso: string): Date => new Date(`${iso}T12:00:00Z`);
const iso = (d: Date): string => d.toISOString().slice(0, 10);
const middle = (days: Days | null): Date | null =>
  days?.earliest && days.latest ? new Date((noon(days.earliest).getTime() + noon(days.latest).getTime()) / 2) : null;

function later(from: Date, months: number): Date {
  const d = new Date(from);
  d.setUTCMonth(d.getUTCMonth() + months);
  return d;
}

interface Moment {
  at: Date;
  share: number;
}

const height = 30;
const wedge = (x: (d: Date) => number) =>
  area<Moment>()
    .x((m) => x(m.at))
    .y0((m) => height / 2 + (m.share * height) / 2)
    .y1((m) => height / 2 - (m.share * height) / 2);

/** Drawn only where the worth falls evenly and the days are known; other methods have their steps in words. */
export function worth(v: Depreciation): TemplateResult | typeof nothing {
  const [made, out] = [middle(v.installed), middle(v.moveOut)];
  if (!made || !out || made >= out || (v.method && v.method !== 'straight-line')) return nothing;
  const moveIn = middle(v.moveIn);
  const came = moveIn && moveIn > made ? moveIn : made;
  const end = later(made, v.usefulLifeMonths.likely);
  const last = new Date(Math.max(later(made, v.usefulLifeMonths.high).getTime(), out.getTime()));
  const x = scaleTime([made, last], [0, 100]);
  const share = (at: Date) => Math.max(0, 1 - (at.getTime() - made.getTime()) / (end.getTime() - made.getTime()));
  const piece = (from: Date, to: Date, name: string) => {
    const stop = to < end ? to : end;
    if (from >= stop) return nothing;
    return svg`<path class="worth-${name}" vector-effect="non-scaling-stroke" d=${wedge(x)([
      { at: from, share: share(from) },
      { at: stop, share: share(stop) },
    ])} />`;
  };
  const stroke = (at: Date, name: string) =>
    svg`<path class=${name} d="M${x(at)} -4V${height + 4}" vector-effect="non-scaling-stroke" />`;
  const ends = [v.usefulLifeMonths.low, v.usefulLifeMonths.high]
    .filter((m) => m !== v.usefulLifeMonths.likely)
    .map((m) => later(made, m));
  return html`<figure class="worth" role="img" aria-label=${say('page.worth.label', { left: v.remainingShare.likely })}>
    <svg class="worth-wedge" viewBox="0 -4 100 ${height + 8}" preserveAspectRatio="none" aria-hidden="true" focusable="false">
      <path class="worth-line" d="M0 ${height / 2}H100" vector-effect="non-scaling-stroke" />
      ${piece(made, came, 'before')} ${piece(came, out, 'during')} ${piece(out, last, 'left')} ${stroke(came, 'worth-move')} ${stroke(out, 'worth-move')}
      ${ends.map((at) => stroke(at, 'worth-end'))}
    </svg>
    <p class="worth-ends" aria-hidden="true"><span>${shortDay(iso(made))}</span><span>${shortDay(iso(last))}</span></p>
    <ul class="worth-parts" aria-hidden="true">
      ${came > made ? html`<li>${key('before')} ${say('page.worth.before', { day: shortDay(iso(came)) })}</li>` : nothing}
      <li>${key('during')} ${say('page.worth.during', { from: shortDay(iso(came)), to: shortDay(iso(out)) })}</li>
      <li>${key('left')} ${say('page.worth.left', { left: v.remainingShare.likely, end: shortDay(iso(end)) })}</li>
      ${ends.length ? html`<li>${key('end')} ${say('page.worth.ends')}</li>` : nothing}
    </ul>
  </figure>`;
}

const key = (name: string): TemplateResult =>
  html`<svg class="swatch" viewBox="0 0 14 14" width="14" height="14" aria-hidden="true" focusable="false">
    ${name === 'end' ? svg`<path class="worth-end" d="M7 0V14" />` : svg`<path class="worth-${name}" d="M.75 2.75h12.5v8.5H.75Z" />`}
  </svg>`;
