// What is worth finding out: the open questions, the one that moves the most money first, each answerable on the spot.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Desk } from '../../app/desk';
import { isZero, shortMoney } from '../../say/show';
import { say } from '../../say/wording';
import type { Question } from '../../case/assessment';
import { type Asked, goOn, keyOf } from '../../case/questions';
import { fieldOfQuestion } from '../../parts/fields';
import { field } from '../../parts/field';
import './unknowns.css';

const atOnce = 5;

/** After Enter the next question is at hand, be it one that only this answer raised; after the last one nothing moves. */
function toNext(d: Desk, control: HTMLElement): void {
  const next = (): HTMLElement | null | undefined =>
    control
      .closest('.question')
      ?.nextElementSibling?.querySelector<HTMLElement>('input:not([tabindex="-1"]), select, button');
  const there = next();
  if (there) there.focus();
  else void d.settled().then(() => document.activeElement === control && next()?.focus());
}

function question(d: Desk, { question: q, answered }: Asked): TemplateResult {
  const answer = fieldOfQuestion(d, q);
  return html`<li class="question" data-answered=${answered ? 'yes' : nothing}>
    ${answered ? html`<p class="swing">${say('page.unknowns.answered')}</p>` : isZero(q.swing) ? nothing : html`<p class="swing">${say('page.unknowns.moves', { sum: shortMoney(q.swing) })}</p>`}
    ${
      answer
        ? field(d, { ...answer, key: 'q', held: { entered: (control) => toNext(d, control) } })
        : html`<p>${q.text}</p>
          ${openerOf(d, q)}`
    }
  </li>`;
}

/** What is shown now. A question counts as answered where its own field holds a value. */
function asked(d: Desk, open: readonly Question[]): Asked[] {
  const isAnswered = (q: Question): boolean => {
    const f = fieldOfQuestion(d, q);
    return f !== undefined && (f.event ? d.eventOn(f.event) : d.valueAt(f.at)) != null;
  };
  const inHand = document.activeElement?.closest('.unknowns') != null;
  const most = d.folds.has('unknowns') ? open.length : atOnce;
  return (d.sheet.asked = goOn(d.sheet.asked, open, most, isAnswered, inHand));
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
  if (d.case.lines.length === 0 || !d.result) return nothing;
  const shown = asked(d, all);
  if (shown.length === 0) return nothing;
  return html`<section class="unknowns" id="unknowns" aria-labelledby="unknowns-title">
    <h2 id="unknowns-title">${say('page.unknowns.title')}</h2>
    <p>${say('page.unknowns.says')}</p>
    <ol class="questions">
      ${repeat(
        shown,
        (a) => keyOf(a.question),
        (a) => question(d, a),
      )}
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
