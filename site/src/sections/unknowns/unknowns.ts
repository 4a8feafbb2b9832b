// What is worth finding out: the open questions, the one that moves the most money first, each answerable on the spot.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { isZero, shortMoney } from '../../say/show';
import { say } from '../../say/wording';
import type { Question } from '../../case/assessment';
import { fieldOfQuestion } from '../../parts/fields';
import { field } from '../../parts/field';
import './unknowns.css';

const atOnce = 5;

function question(d: Desk, q: Question): TemplateResult {
  const answer = fieldOfQuestion(d, q);
  return html`<li class="question">
    ${!isZero(q.swing) ? html`<p class="swing">${say('page.unknowns.moves', { sum: shortMoney(q.swing) })}</p>` : nothing}
    ${
      answer
        ? field(d, { ...answer, key: 'q' })
        : html`<p>${q.text}</p>
          ${openerOf(d, q)}`
    }
  </li>`;
}

function openerOf(d: Desk, q: Question): TemplateResult | typeof nothing {
  const index = /^\/lines\/(\d+)/.exec(q.asks)?.[1];
  const line = index === undefined ? undefined : d.case.lines[Number(index)];
  if (!line) return nothing;
  return html`<button
    type="button"
    class="link"
    @click=${() => {
      d.open.add(`facts:${line.id}`);
      d.draw();
      void Promise.resolve().then(() => document.getElementById(`thing-${line.id}`)?.focus());
    }}
  >
    ${say('page.unknowns.open', { n: Number(index) + 1 })}
  </button>`;
}

export function unknowns(d: Desk): TemplateResult | typeof nothing {
  const all = d.result?.questions ?? [];
  if (all.length === 0 || d.case.lines.length === 0) return nothing;
  const shown = d.folds.has('unknowns') ? all : all.slice(0, atOnce);
  return html`<section class="unknowns" id="unknowns" aria-labelledby="unknowns-title">
    <h2 id="unknowns-title">${say('page.unknowns.title')}</h2>
    <p>${say('page.unknowns.says')}</p>
    <ol class="questions">
      ${shown.map((q) => question(d, q))}
    </ol>
    ${
      all.length > atOnce
        ? html`<button type="button" class="link" aria-expanded=${d.folds.has('unknowns') ? 'true' : 'false'} @click=${() => d.toggleFold('unknowns')}>
          ${d.folds.has('unknowns') ? say('page.unknowns.fewer') : say('page.unknowns.more', { count: all.length })}
        </button>`
        : nothing
    }
  </section>`;
}
