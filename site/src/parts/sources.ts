// Where a number or a rule comes from, and how that source was read.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../app/desk';
import { say } from '../app/wording';
import type { Sourced } from '../case/assessment';

const shown = 2;

function entry(d: Desk, id: string): TemplateResult {
  const s = d.result?.sources[id];
  if (!s) return html`<li>${id}</li>`;
  const how = s.read === 'practice' || s.read === 'statute-text' ? '' : s.readText;
  return html`<li>
    ${s.url ? html`<a href=${s.url} target="_blank" rel="noopener noreferrer">${s.text}</a>` : s.text}${how ? html`<span class="read-how">${how}</span>` : nothing}
  </li>`;
}

/** The sources of a step or rule, each with how it was read; a long list folds after the first few. */
export function sources(d: Desk, of: Sourced): TemplateResult | typeof nothing {
  const ids = of.sourceIds ?? [];
  if (ids.length === 0) return of.source ? html`<p class="sources">${of.source}</p>` : nothing;
  const rest = ids.slice(shown);
  return html`<ul class="sources" aria-label=${say('page.sources')}>
      ${ids.slice(0, shown).map((id) => entry(d, id))}
    </ul>
    ${
      rest.length
        ? html`<details class="sources"><summary>${say('page.sources.more', { count: rest.length })}</summary>
          <ul>${rest.map((id) => entry(d, id))}</ul></details>`
        : nothing
    }`;
}
