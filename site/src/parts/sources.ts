// Where a number or a rule comes from, and how that source was read.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../app/desk';
import { say } from '../say/wording';
import type { Source, Sourced } from '../case/assessment';

const shown = 2;

function entry(s: Source | string): TemplateResult {
  if (typeof s === 'string') return html`<li>${s}</li>`;
  const how = s.basis === 'practice' || s.basis === 'statute-text' ? '' : s.basisText;
  return html`<li>
    ${s.url ? html`<a href=${s.url} target="_blank" rel="noopener noreferrer">${s.text}</a>` : s.text}${how ? html`<span class="read-how">${how}</span>` : nothing}
  </li>`;
}

/** Sources, each with how it was read (one that is not known by its id); a long list folds after the first few. `guides` stand under them. */
export function sourceList(all: (Source | string)[], guides: (Source | string)[] = []): TemplateResult {
  const rest = all.slice(shown);
  return html`${
    all.length
      ? html`<ul class="sources" aria-label=${say('page.sources')}>
            ${all.slice(0, shown).map(entry)}
          </ul>`
      : nothing
  }
    ${
      rest.length
        ? html`<details class="sources"><summary>${say('page.sources.more', { count: rest.length })}</summary>
          <ul>${rest.map(entry)}</ul></details>`
        : nothing
    }
    ${
      guides.length
        ? html`<details class="sources"><summary>${say('page.sources.guides', { count: guides.length })}</summary>
          <p>${say('page.sources.guides.says')}</p>
          <ul>${guides.map(entry)}</ul></details>`
        : nothing
    }`;
}

/** The law itself and plain practice are named outright; guides, many of other places, stand folded beneath. */
const isOutright = (id: string, s: Source | undefined): boolean => !s || id.startsWith('law') || s.basis === 'practice';

/** The sources of a step or rule of the assessment. */
export function sources(d: Desk, of: Sourced): TemplateResult | typeof nothing {
  const ids = of.sourceIds ?? [];
  if (ids.length === 0) return of.source ? html`<p class="sources">${of.source}</p>` : nothing;
  const sourceOf = (id: string) => d.result?.sources[id];
  const [outright, guides] = [true, false].map((own) =>
    ids.filter((id) => isOutright(id, sourceOf(id)) === own).map((id) => sourceOf(id) ?? id),
  ) as [(Source | string)[], (Source | string)[]];
  return sourceList(outright, guides);
}
