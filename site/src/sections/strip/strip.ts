// On a narrow screen the result is below the charges: this strip keeps the one figure in view and leads to it.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { shortMoney } from '../../say/show';
import { say } from '../../say/wording';
import { headlineOf } from '../sums/sums';
import './strip.css';

export function strip(d: Desk): TemplateResult | typeof nothing {
  const t = d.result?.totals;
  if (!t || d.case.lines.length === 0) return nothing;
  const { says, sum, large } = headlineOf(t);
  return html`<nav class="strip" aria-label=${say('page.strip.label')}><a href="#sums">
    <span class="strip-says">${say(`page.strip.${says}.${d.side}`)}</span>
    ${large ? html`<span class="strip-sum">${shortMoney(sum.likely)}</span>` : nothing}
    <span class="strip-go">${say('page.strip.go')}</span>
  </a></nav>`;
}
