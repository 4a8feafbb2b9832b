// What is wrong with the statement as a paper: what the law wants and is not there, and sums that do not add up.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { say } from '../../say/wording';
import type { Defect } from '../../case/assessment';
import { sources } from '../../parts/sources';
import './papers.css';

const defect = (d: Desk, x: Defect): TemplateResult =>
  html`<li>
    <p>${x.text} ${x.ifMissing}</p>
    ${x.check ? html`<p class="check">${say('page.check')} ${x.check}</p>` : nothing} ${sources(d, x)}
  </li>`;

export function papers(d: Desk): TemplateResult | typeof nothing {
  const { defects = [], audit = [] } = d.result ?? {};
  if (defects.length + audit.length === 0) return nothing;
  return html`<section class="papers" aria-labelledby="papers-title">
    <h2 id="papers-title">${say('page.papers.title')}</h2>
    <ul class="papers-list">
      ${audit.map((a) => html`<li><p>${a.text}</p></li>`)} ${defects.map((x) => defect(d, x))}
    </ul>
  </section>`;
}
