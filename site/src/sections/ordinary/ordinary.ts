// The charges that look like ordinary wear, in one place.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { money } from '../../say/show';
import { say } from '../../say/wording';
import { verdictMark } from '../../parts/mark';
import './ordinary.css';

export function ordinary(d: Desk): TemplateResult | typeof nothing {
  const worn = d.result?.lines.filter((l) => l.verdict === 'ordinary-wear') ?? [];
  if (worn.length === 0) return nothing;
  return html`<section class="ordinary" aria-labelledby="ordinary-title">
    <h2 id="ordinary-title">${say('page.ordinary.title')}</h2>
    <ul class="plain-list">
      ${worn.map(
        (l) => html`<li>
          ${verdictMark('ordinary-wear')}<span>${l.text || say('page.charges.untitled')}</span><span class="figure">${money(l.claimed)}</span>
        </li>`,
      )}
    </ul>
  </section>`;
}
