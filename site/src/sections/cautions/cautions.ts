// The cautions of the assessment. Never folded, never out of the print.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { say } from '../../say/wording';
import './cautions.css';

export function cautions(d: Desk): TemplateResult | typeof nothing {
  const all = d.result?.cautions ?? [];
  if (all.length === 0) return nothing;
  return html`<section class="cautions" aria-labelledby="cautions-title">
    <h2 id="cautions-title">${say('page.cautions.title')}</h2>
    <ul>
      ${all.map((c) => html`<li>${c.text}</li>`)}
    </ul>
  </section>`;
}
