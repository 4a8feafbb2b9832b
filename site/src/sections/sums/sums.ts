// What it comes to: the one figure that matters to this side first, then how it is made up. Each figure opens to its parts.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { pictures } from '../../app/pictures';
import { isZero, money, shortMoney } from '../../say/show';
import { say } from '../../say/wording';
import type { Assessment, Span, Totals } from '../../case/assessment';
import { faultText } from '../../parts/field';
import './sums.css';

const between = (s: Span): string =>
  s.low === s.high ? '' : say('page.sums.between', { low: money(s.low), high: money(s.high) });
const varies = (s: Span): boolean => s.low !== s.high;

interface Headline {
  /** The sentence's key, before the side. */
  says: 'owed' | 'maybe' | 'settled' | 'tenantOwes' | 'fairOnly';
  sum: Span;
  /** False where the sum is not the message. */
  large: boolean;
}

/** The one thing to say first. */
export function headlineOf(t: Totals): Headline {
  if (!t.shortfall) return { says: 'fairOnly', sum: t.fair, large: true };
  if (!isZero(t.shortfall.likely)) return { says: 'owed', sum: t.shortfall, large: true };
  if (!isZero(t.shortfall.high)) return { says: 'maybe', sum: t.shortfall, large: false };
  if (t.owedByTenant && !isZero(t.owedByTenant.likely)) return { says: 'tenantOwes', sum: t.owedByTenant, large: true };
  return { says: 'settled', sum: t.shortfall, large: false };
}

function headline(d: Desk, t: Totals): TemplateResult {
  const { says, sum, large } = headlineOf(t);
  return html`<p class="headline">
      ${large ? html`<span class="headline-sum">${shortMoney(sum.likely)}</span> ` : nothing}
      <span class="headline-says">${say(`page.sums.${says}.${d.side}`, { high: money(sum.high), claimed: money(t.claimed) })}</span>
    </p>
    ${varies(sum) && large ? html`<p class="headline-range">${say('page.sums.range', { low: money(sum.low), high: money(sum.high) })}</p>` : nothing}`;
}

/** A figure that opens to what it is made of; without parts it is a plain row. */
function row(
  name: string,
  figure: string,
  range: string,
  parts: TemplateResult | typeof nothing,
  swatch: TemplateResult | typeof nothing = nothing,
): TemplateResult {
  const head = html`<span class="sum-name">${swatch}${say(`page.sums.${name}`)}</span
    ><span class="sum-figure"><span class="figure">${figure}</span>${range ? html`<span class="range">${range}</span>` : nothing}</span>`;
  return parts === nothing
    ? html`<div class="sum"><div class="sum-head">${head}</div></div>`
    : html`<details class="sum"><summary class="sum-head">${head}</summary><div class="sum-parts">${parts}</div></details>`;
}

const partRow = (label: string, figure: string): TemplateResult =>
  html`<li><span>${label}</span><span class="figure">${figure}</span></li>`;

function rows(d: Desk, a: Assessment): TemplateResult {
  const t = a.totals;
  const swatch = pictures.get(d)?.swatch;
  const each = (figure: (i: number) => string) =>
    html`<ul class="parts-list">${a.lines.map((l, i) => partRow(l.text || say('page.charges.untitled'), figure(i)))}</ul>`;
  const minus = (s: string) => (isZero(s) ? money(s) : `\u2212${money(s)}`);
  const sample = (name: 'charged' | 'fair' | 'paid' | 'due') => (t.fairRefund && swatch ? swatch(name) : nothing);
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
      money(t.fair.likely),
      between(t.fair),
      each((i) => money(a.lines[i]!.fair.likely)),
      sample('fair'),
    )}
    ${
      t.fairRefund
        ? row(
            'fairRefund',
            money(t.fairRefund.likely),
            between(t.fairRefund),
            html`<ul class="parts-list">
            ${partRow(say('page.sums.deposit'), money(t.deposit))}
            ${isZero(t.interest.high) ? nothing : partRow(say('page.sums.interest'), money(t.interest.likely))}
            ${partRow(say('page.sums.lessFair'), minus(t.fair.likely))}
          </ul>`,
          )
        : nothing
    }
    ${row(t.paidBackAssumed ? 'paidBackAssumed' : 'paidBack', money(t.paidBack), '', nothing, sample('paid'))}
    ${
      t.fairRefund && t.shortfall
        ? row(
            'shortfall',
            money(t.shortfall.likely),
            between(t.shortfall),
            html`<ul class="parts-list">
            ${partRow(say('page.sums.fairRefund'), money(t.fairRefund.likely))} ${partRow(say('page.sums.lessPaid'), minus(t.paidBack))}
          </ul>`,
            sample('due'),
          )
        : nothing
    }
  `;
}

/** What the law does to the sum where a duty was missed: the landlord may have lost the right to keep anything. */
function forfeited(d: Desk): TemplateResult | typeof nothing {
  const r = d.result?.remedies;
  if (!r || r.forfeits === 'no' || isZero(r.sumDueForfeited.likely)) return nothing;
  return html`<p class="forfeit">${say(`page.sums.forfeit.${r.forfeits}`, { sum: money(r.sumDueForfeited.likely) })}</p>`;
}

/** What could not be read and was therefore left out: said at the top of the result, with the way to each place. */
function leftOut(d: Desk): TemplateResult | typeof nothing {
  const faults = d.sheet.faults;
  if (faults.length === 0) return nothing;
  return html`<div class="left-out" role="group" aria-label=${say('page.sums.leftOut')}>
    <p class="fault">${say('page.sums.leftOut')}</p>
    <ul>
      ${faults.slice(0, 20).map((f) => {
        const kind = f.code === 'bad-amount' ? 'money' : f.code === 'bad-date' ? 'date' : 'text';
        const line = /^\/lines\/(\d+)/.exec(f.at)?.[1];
        const where = line ? say('page.charges.nth', { n: Number(line) + 1 }) : f.at;
        return html`<li><span class="left-out-where">${where}:</span> ${faultText({ at: f.at, kind, label: '' }, f)}</li>`;
      })}
      ${faults.length > 20 ? html`<li>${say('page.sums.leftOutMore', { count: faults.length - 20 })}</li>` : nothing}
    </ul>
  </div>`;
}

export function sums(d: Desk): TemplateResult {
  const a = d.result;
  return html`<section class="sums" id="sums" aria-labelledby="sums-title">
    <h2 id="sums-title">${say('page.sums.title')}</h2>
    ${d.broken ? html`<p class="fault" role="alert">${say('page.sums.broken', { why: d.broken })}</p>` : nothing}
    ${leftOut(d)}
    ${
      a && d.case.lines.length
        ? html`<div class="headline-box" aria-live="polite" aria-atomic="true">${headline(d, a.totals)}</div>
          ${pictures.get(d)?.flow(a.totals) ?? nothing} ${rows(d, a)}
          ${forfeited(d)}
          <p class="sums-note">${say('page.sums.note')}</p>`
        : html`<p class="empty">${say(d.engine || d.broken ? 'page.sums.empty' : 'page.sums.loading')}</p>`
    }
  </section>`;
}
