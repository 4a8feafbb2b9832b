// What the law may add on top, and the law this page rests on: which place, when it was last read, what is in doubt.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { isZero, longDay, money } from '../../app/show';
import { say } from '../../app/wording';
import { sources } from '../../parts/sources';
import './law.css';

function added(d: Desk): TemplateResult | typeof nothing {
  const r = d.result?.remedies;
  if (!r || !r.text || d.case.lines.length === 0) return nothing;
  return html`<section class="added" aria-labelledby="added-title">
    <h2 id="added-title">${say('page.added.title')}</h2>
    ${
      isZero(r.most)
        ? nothing
        : html`<p class="added-sum">
          ${r.least === r.most ? html`<span class="figure">${money(r.most)}</span>` : html`${say('page.added.range', { least: money(r.least), most: money(r.most) })}`}
        </p>`
    }
    <p>${r.text}</p>
    ${r.items?.length ? html`<ul class="rules">${r.items.map((i) => html`<li><p>${i.text}</p>${sources(d, i)}</li>`)}</ul>` : sources(d, r)}
    <p class="added-note">${say('page.added.note')}</p>
  </section>`;
}

function rests(d: Desk): TemplateResult | typeof nothing {
  const law = d.result?.law;
  if (!law) return nothing;
  return html`<section class="law" aria-labelledby="law-title">
    <h2 id="law-title">${say('page.law.title', { place: law.name })}</h2>
    <p>${say('page.law.reviewed', { day: longDay(law.reviewed) })}${law.weak ? html` <strong>${say('page.law.weak')}</strong>` : nothing}</p>
    ${
      law.guide
        ? html`<p>
          ${say('page.law.guide')}
          ${law.guide.url ? html`<a href=${law.guide.url} target="_blank" rel="noopener noreferrer">${law.guide.title}</a>` : law.guide.title}
          (${law.guide.publisher})
        </p>`
        : nothing
    }
    ${
      law.checks.length
        ? html`<details class="fold"><summary>${say('page.law.checks', { count: law.checks.length })}</summary>
          <ul class="rules">${law.checks.map((c) => html`<li>${c.text}</li>`)}</ul></details>`
        : nothing
    }
  </section>`;
}

export const law = (d: Desk): TemplateResult => html`${added(d)}${rests(d)}`;
