// The cautions of the assessment, never folded, never out of the print. Beneath them, where to ask in that place, and how often the
// engine agreed with those who decided (measured.json is written by tests/reference/measure-agreement.mjs).

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { nameOfPlace } from '../../engine/rules';
import { helpList } from '../../parts/help';
import { say } from '../../say/wording';
import measured from './measured.json';
import './cautions.css';

export function cautions(d: Desk): TemplateResult | typeof nothing {
  const all = d.result?.cautions ?? [];
  if (all.length === 0) return nothing;
  const help = d.result?.law?.help ?? [];
  return html`<section class="cautions" aria-labelledby="cautions-title">
    <h2 id="cautions-title">${say('page.cautions.title')}</h2>
    <ul>
      ${all.map((c) => html`<li>${c.text}</li>`)}
    </ul>
    ${
      help.length
        ? html`<details class="fold cautions-help">
            <summary>${say('page.cautions.help')} <span class="fold-count">${nameOfPlace(d.case.jurisdiction)}</span></summary>
            ${helpList(help)}
          </details>`
        : nothing
    }
    <details class="fold">
      <summary>${say('page.measured.title')}</summary>
      <p>${say('page.measured.says', measured)}</p>
      <p>${say('page.measured.means')}</p>
    </details>
  </section>`;
}
