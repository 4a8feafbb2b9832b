// Where you stand: what to do next and by which day, the money, and how it divides. First on a phone, beside everything else on a desk.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import type { Heap } from '../../case/outcome';
import { sortLines } from '../../case/outcome';
import { announced } from '../../say/announce';
import type { NextStep } from '../../case/next-step';
import { say } from '../../say/wording';
import { shortMoney } from '../../say/show';
import { headlineOf } from './money';
import { step } from './step';
import { shownSteps } from './steps';
import { leftOut, sumsFold } from '../sums/sums';
import { deskPlaces } from '../strip/strip';
import './outlook.css';

const heaps: Heap[] = ['not-fair', 'fair', 'ask'];

/** How what was charged divides; each heap shows its charges alone. */
function divided(d: Desk): TemplateResult | typeof nothing {
  const a = d.result!;
  if (a.lines.length === 0) return nothing;
  const { count, sum } = sortLines(a);
  const shown = d.filter;
  return html`<div class="heaps" role="group" aria-label=${say('page.outlook.heaps')}>
    ${heaps.map(
      (h) =>
        html`<button type="button" class="heap" data-heap=${h} aria-pressed=${shown === h ? 'true' : 'false'} ?disabled=${count[h] === 0} @click=${() => d.showOnly(shown === h ? '' : h)}>
          <span class="heap-name">${say(`page.heap.${h}${d.side === 'landlord' ? '.landlord' : ''}`)}</span> <span class="figure">${shortMoney(sum[h])}</span>
          <span class="unseen">${say(count[h] === 1 ? 'page.outlook.ofCharges.one' : 'page.outlook.ofCharges', { count: count[h] })}</span>
        </button>`,
    )}
  </div>`;
}

function moneyLines(d: Desk): TemplateResult | typeof nothing {
  const h = headlineOf(d);
  if (!h) return nothing;
  return html`<div class="headline-box">
    <p class="headline">${h.sum ? html`<span class="headline-sum">${h.sum}</span> ` : nothing}<span class="headline-says">${h.says}</span></p>
    ${h.beside ? html`<p class="headline-range">${h.beside}</p>` : nothing}
  </div>`;
}

/** The result in one breath, for who cannot see it change. */
function inWords(d: Desk, first: NextStep | undefined): string {
  const h = headlineOf(d);
  const money = h ? [h.sum, h.says].filter(Boolean).join(' ') : '';
  return [money, first ? say(`page.next.spoken.${first.kind}`) : ''].filter(Boolean).join(' ');
}

export function outlook(d: Desk): TemplateResult | typeof nothing {
  if (d.blank) return nothing;
  const steps = d.result ? shownSteps(d) : [];
  const [first, then] = steps;
  const also =
    then && (then.kind === 'own-day' || then.kind === 'missed') && first?.kind !== 'missed' ? then : undefined;
  return html`<aside class="outlook" aria-labelledby="result">
    ${d.result ? deskPlaces(d) : nothing}
    <div class="outlook-card">
      <h2 id="result" tabindex="-1">${say('page.outlook.title')}</h2>
      ${d.broken ? html`<p class="fault" role="alert">${say('page.sums.broken', { why: d.broken })}</p>` : nothing}
      ${
        d.result
          ? html`${first ? step(d, first, also) : nothing} ${leftOut(d)} ${moneyLines(d)} ${divided(d)}
            <p class="outlook-caution">${say('page.outlook.caution')} <a href="#cautions-title">${say('page.outlook.cautions')}</a></p>`
          : html`<p class="empty">${d.broken ? '' : say('page.sums.loading')}</p>`
      }
      <p class="unseen" aria-live="polite" aria-atomic="true">${d.result ? announced(inWords(d, first), () => d.draw()) : ''}</p>
    </div>
    ${d.result ? sumsFold(d) : nothing}
  </aside>`;
}
