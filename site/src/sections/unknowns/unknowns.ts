// What is worth finding out: three open questions, one of them open to be answered. What turns a day or a right comes before money.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Desk, Sheet } from '../../app/desk';
import { isZero, shortMoney } from '../../say/show';
import { say } from '../../say/wording';
import type { Question } from '../../case/assessment';
import { type Asked, goOn, keyOf } from '../../case/questions';
import { answerName, fieldOfQuestion, keepsName } from '../../parts/fields';
import { field } from '../../parts/field';
import { valueWords } from '../../parts/value-words';
import { livesThere, ranked, affectsDeadline } from '../../case/next-step';
import { asideOf, putAside } from '../outlook/aside';
import { openCharge } from '../charges/open-charge';
import './unknowns.css';

const atOnce = 3;

/** The question that lies open, by what it asks; the first open one until another is chosen. */
const chosen = new WeakMap<Sheet, string>();

/** The questions that somebody was at in this section: one that is answered elsewhere on the page goes, like any that is settled. */
const touched = new WeakMap<Sheet, Set<string>>();

function touch(d: Desk, q: Question): void {
  touched.set(d.sheet, (touched.get(d.sheet) ?? new Set()).add(keyOf(q)));
}

/** Opens one question and puts the cursor in it. */
function openOne(d: Desk, q: Question): void {
  chosen.set(d.sheet, keyOf(q));
  d.draw();
  void Promise.resolve().then(() =>
    document
      .querySelector<HTMLElement>(
        '.question[data-open] :is(input:not([tabindex="-1"]), select, .question-open, .unknowns-line)',
      )
      ?.focus(),
  );
}

/** After Enter the next question is at hand, be it one that only this answer raised; after the last one nothing moves. */
function toNext(d: Desk, q: Question): void {
  void d.settled().then(() => {
    const at = d.sheet.asked.findIndex((a) => keyOf(a.question) === keyOf(q));
    const next = d.sheet.asked.slice(at + 1).find((a) => !a.answered);
    if (next) openOne(d, next.question);
  });
}

const skip = (d: Desk, q: Question): void => {
  putAside(d, keyOf(q));
  toNext(d, q);
};

function question(d: Desk, { question: q, answered }: Asked, isOpen: boolean): TemplateResult {
  const answer = fieldOfQuestion(d, q);
  const own = keepsName(q);
  const held = answer ? valueWords(d, answer) : '';
  const effect = answered
    ? `${say('page.unknowns.answered')}${held ? ` ${held}` : ''}`
    : affectsDeadline(q)
      ? say('page.unknowns.turnsDay')
      : isZero(q.effect)
        ? ''
        : say('page.unknowns.moves', { sum: shortMoney(q.effect) });
  if (!isOpen)
    return html`<li class="question" data-answered=${answered ? 'yes' : nothing}>
      <button type="button" class="question-open" aria-expanded="false" @click=${() => openOne(d, q)}>
        <span>${q.text}</span>${effect ? html` <span class="swing">${effect}</span>` : nothing}
      </button>
    </li>`;
  return html`<li class="question" data-open="yes" data-answered=${answered ? 'yes' : nothing}>
    ${effect ? html`<p class="swing">${effect}</p>` : nothing}
    ${
      answer
        ? html`${own ? html`<p>${q.text}</p>` : nothing}
          ${field(d, { ...answer, key: 'q', label: own ? answerName(d, q) : q.text, held: { entered: () => toNext(d, q) } })}`
        : html`<p>${q.text}</p>
          ${openerOf(d, q)}`
    }
    ${answered ? nothing : html`<button type="button" class="link question-skip" @click=${() => skip(d, q)}>${say('page.next.notKnown')}</button>`}
  </li>`;
}

/** What is shown now. A question counts as answered where its own field, here, was given a value. */
function asked(d: Desk, open: readonly Question[]): Asked[] {
  const isAnswered = (q: Question): boolean => {
    const f = touched.get(d.sheet)?.has(keyOf(q)) ? fieldOfQuestion(d, q) : undefined;
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
    class="link unknowns-line"
    @click=${() => openCharge(d, Number(index))}
  >
    ${say('page.unknowns.open', { n: Number(index) + 1 })}
  </button>`;
}

/** Every open question: those worth a step first, then what the law asks besides. */
function rankedAll(d: Desk): Question[] {
  const first = ranked(d.result!, d.side);
  return [...first, ...d.result!.questions.filter((q) => !first.includes(q))];
}

export function unknowns(d: Desk): TemplateResult | typeof nothing {
  if (!d.result || livesThere(d.case, d.today)) return nothing;
  const aside = asideOf(d);
  const all = d.folds.has('unknowns') ? rankedAll(d) : ranked(d.result, d.side).filter((q) => !aside.has(keyOf(q)));
  const shown = asked(d, all);
  if (shown.length === 0) return nothing;
  const wanted = chosen.get(d.sheet);
  const first = shown.find((a) => keyOf(a.question) === wanted) ?? shown.find((a) => !a.answered) ?? shown[0]!;
  return html`<section class="unknowns" id="unknowns" aria-labelledby="unknowns-title">
    <h2 id="unknowns-title">${say('page.unknowns.title')}</h2>
    <p>${say('page.unknowns.says')}</p>
    <ol class="questions" @focusin=${() => touch(d, first.question)} @pointerdown=${() => touch(d, first.question)}>
      ${repeat(
        shown,
        (a) => keyOf(a.question),
        (a) => question(d, a, a === first),
      )}
    </ol>
    ${
      d.result.questions.length > atOnce
        ? html`<button type="button" class="link" aria-expanded=${d.folds.has('unknowns') ? 'true' : 'false'} @click=${() => d.toggleFold('unknowns')}>
          ${d.folds.has('unknowns') ? say('page.unknowns.fewer') : say('page.unknowns.more', { count: d.result.questions.length })}
        </button>`
        : nothing
    }
  </section>`;
}
