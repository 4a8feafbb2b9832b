// How the sums are made up. Each figure opens to its parts.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { pictures } from '../../app/pictures';
import { isZero, middle, money } from '../../say/show';
import { say } from '../../say/wording';
import type { Assessment, Range } from '../../case/assessment';
import { knowsPaidBack } from '../../case/outcome';
import { faultText, fieldId } from '../../parts/field';
import { fieldAt } from '../../parts/fields';
import { atATime } from '../../parts/stretch';
import './sums.css';

const between = (s: Range): string =>
  s.low === s.high || s.likely === null ? '' : say('page.sums.between', { low: money(s.low), high: money(s.high) });
/** A figure that opens to what it is made of; without parts it is a plain row. */
function row(
  name: string,
  figure: string,
  range: string,
  parts: TemplateResult | typeof nothing,
  swatch: unknown = nothing,
): TemplateResult {
  const head = html`<span class="sum-name">${swatch}${say(`page.sums.${name}`)}</span
    ><span class="sum-figure"><span class="figure">${figure}</span>${range ? html`<span class="range">${range}</span>` : nothing}</span>`;
  return parts === nothing
    ? html`<div class="sum"><div class="sum-head">${head}</div></div>`
    : html`<details class="sum"><summary class="sum-head">${head}</summary><div class="sum-parts">${parts}</div></details>`;
}

const partRow = (label: string, figure: string): TemplateResult =>
  html`<li><span>${label}</span><span class="figure">${figure}</span></li>`;

/** What was paid back, as far as anybody said; what still is to be paid back only where that is known. */
function paidAndDue(a: Assessment, known: boolean, sample: (name: 'paid' | 'due') => unknown): TemplateResult {
  const t = a.totals;
  if (!known) return row('paidBack', say('page.sums.notKnown'), '', nothing, sample('paid'));
  const parts = (due: Range, refund: Range): TemplateResult =>
    row(
      'shortfall',
      middle(due),
      between(due),
      html`<ul class="parts-list">
        ${partRow(say('page.sums.fairRefund'), middle(refund))} ${partRow(say('page.sums.lessPaid'), minus(t.paidBack))}
      </ul>`,
      sample('due'),
    );
  return html`${row(t.paidBackAssumed ? 'paidBackAssumed' : 'paidBack', money(t.paidBack), '', nothing, sample('paid'))}
  ${t.fairRefund && t.shortfall ? parts(t.shortfall, t.fairRefund) : nothing}`;
}

const minus = (s: string): string => (isZero(s) ? money(s) : `\u2212${money(s)}`);

function rows(d: Desk, a: Assessment): TemplateResult {
  const t = a.totals;
  const swatch = pictures.get(d)?.swatch;
  const each = (figure: (i: number) => string) =>
    html`<ul class="parts-list">
      ${a.lines.slice(0, atATime).map((l, i) => partRow(l.text || say('page.charges.untitled'), figure(i)))}
      ${a.lines.length > atATime ? html`<li>${say('page.sums.andMore', { count: a.lines.length - atATime })}</li>` : nothing}
    </ul>`;
  const known = knowsPaidBack(d.case, t);
  const sample = (name: 'charged' | 'fair' | 'paid' | 'due') =>
    known && t.fairRefund && swatch ? swatch(name) : nothing;
  return html`
    ${row(
      'claimed',
      money(t.claimed),
      '',
      each((i) => money(a.lines[i]!.claimed)),
      sample('charged'),
    )}
    ${row(
      'fair',
      middle(t.fair),
      between(t.fair),
      each((i) => middle(a.lines[i]!.fair)),
      sample('fair'),
    )}
    ${
      t.fairRefund
        ? row(
            'fairRefund',
            middle(t.fairRefund),
            between(t.fairRefund),
            html`<ul class="parts-list">
            ${partRow(say('page.sums.deposit'), money(t.deposit))}
            ${isZero(t.interest.high) ? nothing : partRow(say('page.sums.interest'), money(t.interest.likely))}
            ${isZero(t.keptApart.high) ? nothing : partRow(say('page.sums.keptApart'), middle(t.keptApart))}
            ${partRow(say('page.sums.lessFair'), t.fair.likely === null ? middle(t.fair) : minus(t.fair.likely))}
            ${isZero(t.paidApart.high) ? nothing : partRow(say('page.sums.paidApart'), middle(t.paidApart))}
          </ul>`,
          )
        : nothing
    }
    ${paidAndDue(a, known, sample)} ${t.counterclaim ? html`<p class="counterclaim">${t.counterclaim}</p>` : nothing}
  `;
}

/** The name of a place of the case as the page shows it, with the way there. */
function placeOf(d: Desk, at: string): TemplateResult | string {
  const line = /^\/lines\/(\d+)/.exec(at)?.[1];
  if (line) return html`<a href="#text-${line}">${say('page.charges.nth', { n: Number(line) + 1 })}</a>`;
  const known = fieldAt(d, at);
  return known ? html`<a href="#${fieldId(known)}">${known.label}</a>` : at;
}

/** What could not be read and was therefore left out: said at the top of the result, with the way to each place. */
export function leftOut(d: Desk): TemplateResult | typeof nothing {
  const faults = d.shownFaults;
  if (faults.length === 0) return nothing;
  return html`<div class="left-out" role="group" aria-label=${say('page.sums.leftOut')}>
    <p class="fault">${say('page.sums.leftOut')}</p>
    <ul>
      ${faults.slice(0, 20).map((f) => {
        const kind =
          f.code === 'bad-amount' || f.code === 'amount-too-large' ? 'money' : f.code === 'bad-date' ? 'date' : 'text';
        return html`<li><span class="left-out-where">${placeOf(d, f.at)}:</span> ${faultText({ at: f.at, kind, label: '' }, f)}</li>`;
      })}
      ${faults.length > 20 ? html`<li>${say('page.sums.leftOutMore', { count: faults.length - 20 })}</li>` : nothing}
    </ul>
  </div>`;
}

/** How the sums add up: open on a desk, where there is room for it; folded on a phone. */
export function sumsFold(d: Desk): TemplateResult | typeof nothing {
  const a = d.result;
  if (!a || (d.case.lines.length === 0 && !a.totals.deposit)) return nothing;
  return html`<details class="fold sums" id="sums" ?open=${matchMedia('(min-width: 68rem)').matches}>
    <summary>${say('page.sums.title')}</summary>
    ${knowsPaidBack(d.case, a.totals) ? (pictures.get(d)?.flow(a.totals) ?? nothing) : nothing} ${rows(d, a)}
    ${a.totals.counted ? html`<p class="sums-note">${a.totals.counted.text}</p>` : nothing}<p class="sums-note">${say('page.sums.note')}</p>
  </details>`;
}
