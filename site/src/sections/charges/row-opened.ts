// A charge opened: the one question about it with its answers, how the fair sum was reached, and more facts folded.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { say } from '../../say/wording';
import type { JudgedLine, Question } from '../../case/assessment';
import type { Line } from '../../case/case';
import { questionOf } from '../../case/outcome';
import { isZero, shortMoney } from '../../say/show';
import { field } from '../../parts/field';
import { answerName, fieldOfQuestion } from '../../parts/fields';
import { findings, lineFacts, replaceLine } from './line-facts';
import { seenPart } from '../walk/door';
import { lineSteps } from './line-steps';
import { faultsName, shortQuestion } from './open-charge';

function tools(d: Desk, index: number): TemplateResult {
  const last = d.case.lines.length - 1;
  const of = say('page.charges.of', { n: index + 1 });
  const tool = (name: string, act: () => void, disabled = false) =>
    html`<button type="button" class="link" ?disabled=${disabled} @click=${act}>${say(`page.charges.${name}`)}<span class="unseen"> ${of}</span></button>`;
  const remove = () => {
    d.removeLine(index);
    // The cursor goes to the charge that took its place, not to nowhere.
    void Promise.resolve().then(() => document.getElementById(`text-${index}`)?.focus());
  };
  return html`<div class="charge-tools">
    ${tool('up', () => d.moveLine(index, -1), index === 0)} ${tool('down', () => d.moveLine(index, 1), index === last)}
    ${tool('copy', () => d.duplicateLine(index))} ${tool('remove', remove)}
  </div>`;
}

/** What the words of the charge were read as: kept, or struck by choosing another thing. */
function readAs(d: Desk, line: Line, index: number, judged: JudgedLine): TemplateResult | typeof nothing {
  if (!judged.recognition || !judged.element || line.element) return nothing;
  const what = [judged.elementText, judged.findingText].filter(Boolean).join(': ');
  const keep = () =>
    replaceLine(d, index, {
      element: judged.element!,
      finding: judged.finding ?? undefined,
    });
  return html`<p class="read-as">
    ${say('page.charges.readAs', { what })}
    <button type="button" class="link" @click=${keep}>${say('page.charges.readAs.keep')}</button>
    <button type="button" class="link" @click=${() => openFacts(d, line)}>${say('page.charges.readAs.other')}</button>
  </p>`;
}

/** Unfolds the facts and puts the cursor on one: the thing, if no other is named or the other has no box. */
function openFacts(d: Desk, line: Line, member = 'thing'): void {
  const name = `facts:${line.id}`;
  if (!d.folds.has(name)) d.toggleFold(name);
  void Promise.resolve().then(() =>
    (document.getElementById(`${member}-${line.id}`) ?? document.getElementById(`thing-${line.id}`))?.focus(),
  );
}

/** The question that is being answered: it stays while the cursor is in it. */
let held: { id: string; question: Question | undefined } | null = null;

function questionFor(d: Desk, judged: JudgedLine | undefined): Question | undefined {
  if (!judged || !d.result) return undefined;
  const inside = document.activeElement?.closest(`#row-${CSS.escape(judged.id)} .row-question`) != null;
  if (held?.id === judged.id && inside) return held.question;
  const question = questionOf(d.result, judged);
  held = { id: judged.id, question };
  return question;
}

/** What answers the question. */
function answer(d: Desk, line: Line, q: Question): TemplateResult | typeof nothing {
  const member = q.asks.slice(q.asks.lastIndexOf('/') + 1);
  const own = fieldOfQuestion(d, q);
  if (member === 'finding') return nothing;
  if (!own)
    return html`<p><button type="button" class="tool" @click=${() => openFacts(d, line, member)}>${say('page.standing.fillIn')}</button></p>`;
  return field(d, { ...own, key: 'row', label: answerName(d, q), held: { entered: () => undefined } });
}

/** The faults of the thing it is about, at once where none is chosen or that is the question; then what else the question asks. */
function answers(
  d: Desk,
  line: Line,
  index: number,
  judged: JudgedLine | undefined,
  q: Question | undefined,
): TemplateResult | typeof nothing {
  const element = line.element ?? judged?.element ?? undefined;
  const faults = faultsName(line);
  if (element && (!line.finding || q?.asks.endsWith('/finding'))) d.open.add(faults);
  const own = q ? answer(d, line, q) : nothing;
  const list = element && d.open.has(faults) ? findings(d, line, index, element, judged?.finding ?? '') : nothing;
  return own === nothing && list === nothing ? nothing : html`<div class="fields">${own} ${list}</div>`;
}

/** What is to be settled about the charge, with its answers; nothing where nothing is. */
function question(d: Desk, line: Line, index: number, judged: JudgedLine | undefined): TemplateResult | typeof nothing {
  const q = questionFor(d, judged);
  const read = judged ? readAs(d, line, index, judged) : nothing;
  const given = answers(d, line, index, judged, q);
  if (!q && read === nothing && given === nothing) return nothing;
  return html`<div class="row-question">
    ${read}
    ${q ? html`<h3>${shortQuestion(d, q)}</h3>${isZero(q.effect) ? nothing : html`<p class="swing">${say('page.unknowns.moves', { sum: shortMoney(q.effect) })}</p>`}` : nothing}
    ${given}
  </div>`;
}

/** The dangers of what the charge is about, for who thinks of mending it. */
const hazards = (d: Desk, codes: string[]): TemplateResult =>
  html`<ul class="row-hazards">
    ${codes.map((code) => html`<li>${d.result?.cautions.find((c) => c.code === code)?.text ?? ''}</li>`)}
  </ul>`;

export function rowOpened(d: Desk, line: Line, index: number, judged: JudgedLine | undefined): TemplateResult {
  const name = `facts:${line.id}`;
  // Where no thing is known its field is wanted at once; it stays open when the words are read while somebody is at it.
  if (judged && !judged.element && !line.element) d.folds.add(name);
  const showsFacts = d.folds.has(name);
  return html`${d.case.walkThrough ? seenPart.get(d)?.seen(d, line, index, judged) : nothing}
    ${question(d, line, index, judged)}
    ${judged?.hazards?.length ? hazards(d, judged.hazards) : nothing}
    ${judged ? lineSteps(d, judged) : nothing}
    <details
      class="fold row-facts"
      ?open=${showsFacts}
      @toggle=${(e: Event) => {
        if ((e.target as HTMLDetailsElement).open !== d.folds.has(name)) d.toggleFold(name);
      }}
    >
      <summary>${say('page.charges.facts')}<span class="unseen"> ${say('page.charges.of', { n: index + 1 })}</span></summary>
      ${showsFacts ? lineFacts(d, line, index, judged) : nothing}
    </details>
    ${tools(d, index)}`;
}
