// On a narrow screen: four places, one tap each, and above them the one line that matters: a day, else the money. Plain links, so the
// way back works. On a desk the same places stand as links above the result.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { nearDay } from '../../say/show';
import { nearness } from '../../say/near';
import { say } from '../../say/wording';
import type { NextStep } from '../../case/next-step';
import { dayCount } from '../days/days';
import { hasLetter } from '../letter/has-letter';
import { headlineOf } from '../outlook/money';
import { stepsOf } from '../outlook/steps';
import './strip.css';

interface Place {
  name: 'charges' | 'result' | 'days' | 'letter';
  to: string;
  count: number;
}

export function placesOf(d: Desk): Place[] {
  return [
    { name: 'charges', to: 'charges-title', count: d.case.lines.length },
    { name: 'result', to: 'result', count: 0 },
    { name: 'days', to: 'days', count: dayCount(d) },
    ...(hasLetter(d) ? [{ name: 'letter', to: 'letter', count: 0 } as const] : []),
  ];
}

/** The place that is in view: the last whose heading has been reached. */
let here: Place['name'] = 'charges';
let watching = false;

function watch(d: Desk): void {
  if (watching) return;
  watching = true;
  let waiting = false;
  const look = () => {
    waiting = false;
    const tops = placesOf(d)
      .map((p) => ({ name: p.name, top: document.getElementById(p.to)?.getBoundingClientRect().top ?? Infinity }))
      .filter((p) => p.top < innerHeight / 2)
      .sort((a, b) => b.top - a.top);
    const now = tops[0]?.name ?? 'charges';
    if (now === here) return;
    here = now;
    d.draw();
  };
  addEventListener(
    'scroll',
    () => {
      if (!waiting) requestAnimationFrame(look);
      waiting = true;
    },
    { passive: true },
  );
}

const links = (d: Desk): TemplateResult =>
  html`<ul class="places">
    ${placesOf(d).map(
      (p) =>
        html`<li><a href="#${p.to}" aria-current=${p.name === here ? 'location' : nothing}>${say(`page.strip.${p.name}`)}${p.count ? html` <span class="places-count">${p.count}</span>` : nothing}</a></li>`,
    )}
  </ul>`;

/** A day of one's own, one that was missed, else the money. */
function line(d: Desk): TemplateResult | typeof nothing {
  const days = stepsOf(d).filter(
    (s): s is NextStep & { kind: 'own-day' | 'lapsed' } => s.kind === 'own-day' || s.kind === 'lapsed',
  );
  const own = days[0];
  if (own?.kind === 'lapsed')
    return html`<a class="strip-line" data-loud="yes" href="#result">${say('page.strip.lapsed')}</a>`;
  if (own?.date.last?.earliest) {
    const near = nearness(d.today, own.date);
    return html`<a class="strip-line" data-loud="yes" href="#result">${say('page.next.byDay', { what: own.date.label, day: nearDay(d.today, own.date.last.earliest) })} ${near}</a>`;
  }
  const h = headlineOf(d);
  if (!h) return nothing;
  return html`<a class="strip-line" href="#result">${h.sum ? html`<span class="strip-sum">${h.sum}</span> ` : nothing}${h.says}</a>`;
}

/** The links at the top of the result on a desk. */
export const deskPlaces = (d: Desk): TemplateResult =>
  html`<nav class="desk-places" aria-label=${say('page.strip.label')}>${links(d)}</nav>`;

export function strip(d: Desk): TemplateResult | typeof nothing {
  if (d.blank || !d.result) return nothing;
  watch(d);
  return html`<nav class="strip" aria-label=${say('page.strip.label')}>
    <div class="strip-top">
      ${line(d)}
      ${d.canUndo ? html`<button type="button" class="strip-undo" @click=${() => d.undo()}>${say('page.tool.undo')}</button>` : nothing}
    </div>
    ${links(d)}
  </nav>`;
}
