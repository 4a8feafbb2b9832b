// One row of the ledger: the charge as worded and its sum; what follows for the money, the fair sum and the deciding reason in one line.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { live } from 'lit/directives/live.js';
import type { Desk } from '../../app/desk';
import { later } from '../../app/later';
import { money } from '../../say/show';
import { say } from '../../say/wording';
import type { JudgedLine } from '../../case/assessment';
import { isUsedUp, type Outcome, questionOf } from '../../case/outcome';
import type { Line } from '../../case/case';
import { withCreditTyped } from '../../case/edits';
import { amountFromTyping, isBelowZero, shownAmount, withoutMinus } from '../../case/typed-money';
import { faultText, field } from '../../parts/field';
import { fieldsAt } from '../../parts/fields';
import { verdictMark } from '../../parts/mark';
import { wearLine } from '../../parts/wear-line';
import { atATime, showRow } from '../../parts/stretch';
import { wordMarks } from './word-marks';
import { listName, rowName, shortQuestion, toggleCharge } from './open-charge';

const opened = later(() => import('./row-opened'));

/** Fetches what a charge opens to, so that opening does not wait. */
export const fetchAhead = (): Promise<unknown> => opened.fetch();

const bare = (amount: string): string => money(amount).replace(/^[^\d\u2212]+/, '');

/** Writes to the charge of a row; the empty row becomes a charge first. */
function write(d: Desk, line: Line, index: number, member: string, value: string | undefined): void {
  if (d.case.lines[index]) d.set(`/lines/${index}/${member}`, value, true);
  else if (value)
    d.put({ ...d.case, lines: [...d.case.lines, { id: line.id, [member]: value }] }, `/lines/${index}/${member}`);
}

function next(e: KeyboardEvent, id: string): void {
  if (e.key !== 'Enter' || e.shiftKey) return;
  e.preventDefault();
  document.getElementById(id)?.focus();
}

/** The next row is in the stretch that is not drawn yet. */
function nextStretch(d: Desk, index: number): void {
  showRow(d.sheet, listName, index);
  d.draw();
  void Promise.resolve().then(() => document.getElementById(`text-${index}`)?.focus());
}

function words(d: Desk, line: Line, index: number): TemplateResult {
  const text = String(line.text ?? '');
  return html`<span class="grow" data-text=${text}
    ><textarea
      id="text-${index}"
      rows="1"
      class="charge-text"
      enterkeyhint="next"
      aria-label=${say('page.charges.text', { n: index + 1 })}
      aria-describedby=${d.case.lines[index] ? `verdict-${line.id}` : nothing}
      placeholder=${d.case.lines[index] ? nothing : say('page.charges.placeholder')}
      .value=${live(text)}
      @input=${(e: Event) => write(d, line, index, 'text', (e.target as HTMLTextAreaElement).value || undefined)}
      @keydown=${(e: KeyboardEvent) => next(e, `amount-${index}`)}
    ></textarea
  ></span>`;
}

function amount(d: Desk, line: Line, index: number): TemplateResult {
  const at = `/lines/${index}/amount`;
  const wrong = d.shownFaults.some((f) => f.at === at);
  return html`<input
    id="amount-${index}"
    class="charge-amount"
    type="text"
    inputmode="decimal"
    enterkeyhint="next"
    autocomplete="off"
    aria-label=${say('page.charges.amount', { n: index + 1 })}
    aria-invalid=${wrong ? 'true' : nothing}
    aria-describedby=${wrong ? `amount-${index}-fault` : d.case.lines[index] ? `verdict-${line.id}` : nothing}
    .value=${live(d.typing.get(at) ?? shownAmount(line))}
    @input=${(e: Event) => {
      const typed = (e.target as HTMLInputElement).value;
      d.typing.set(at, typed);
      if (line['credit'] === true && d.case.lines[index]) return d.put(withCreditTyped(d.case, index, typed), at);
      write(d, line, index, 'amount', amountFromTyping(typed));
    }}
    @change=${() => {
      d.typing.delete(at);
      d.draw();
    }}
    @keydown=${(e: KeyboardEvent) => {
      if (e.key === 'Enter' && (index + 1) % atATime === 0) nextStretch(d, index + 1);
      next(e, `text-${index + 1}`);
    }}
  />`;
}

/** The fair sum: a range where a question is still to be asked. */
function fair(
  line: Line,
  judged: JudgedLine | undefined,
  outcome: Outcome | undefined,
): TemplateResult | typeof nothing {
  if (!judged || !line.amount) return nothing;
  const { low, likely, high } = judged.fair;
  const open = (outcome === 'ask' && low !== high) || likely === null;
  return html`<span class="charge-fair">
    <span class="unseen">${say('page.charges.fairWord')}</span>
    <span class="figure">${open ? say('page.charges.range', { low: bare(low), high: bare(high) }) : bare(likely!)}</span>
  </span>`;
}

/** What follows for the money, in words. */
function verdictOf(d: Desk, judged: JudgedLine, outcome: Outcome): string {
  const side = d.side === 'landlord' ? 'landlord' : 'tenant';
  if (outcome !== 'not-fair') return say(`page.outcome.${outcome}.${side}`);
  if (isUsedUp(judged)) {
    const years = Math.round((judged.depreciation!.usefulLifeMonths.likely ?? 0) / 12);
    return years > 0 ? say('page.outcome.usedUp', { years }) : say('page.outcome.usedUp.plain');
  }
  return say(`page.outcome.not-fair.${side}`, { why: say(`page.outcome.why.${judged.verdict}`) });
}

/** The deciding reason in one line: the question to ask, or why it is so. */
function reason(d: Desk, judged: JudgedLine, outcome: Outcome): string {
  const q = outcome === 'ask' ? questionOf(d.result!, judged) : undefined;
  // What is asked of the whole statement is asked above; the row says what is open about its own charge.
  return q && (q.asks.startsWith('/lines/') || q.code === 'amount')
    ? shortQuestion(d, q)
    : isUsedUp(judged)
      ? (judged.turningPoint?.text ?? judged.reason)
      : judged.reason;
}

/** What Wearline makes of it; it opens to the question, the steps and the facts. */
function opener(
  d: Desk,
  line: Line,
  index: number,
  judged: JudgedLine | undefined,
  outcome: Outcome | undefined,
): TemplateResult {
  const isOpen = d.open.has(rowName(line.id));
  return html`<button
    type="button"
    class="charge-opener"
    id="opener-${line.id}"
    aria-expanded=${isOpen ? 'true' : 'false'}
    aria-controls="row-${line.id}"
    @click=${() => toggleCharge(d, line.id)}
  >
    ${
      judged && outcome
        ? html`${verdictMark(judged.verdict)}<span class="charge-verdict" id="verdict-${line.id}"
            ><strong>${verdictOf(d, judged, outcome)}</strong><span class="unseen">. </span
            ><span class="charge-why">${reason(d, judged, outcome)}</span></span
          >`
        : html`<span class="charge-verdict">${say('page.charges.open')}</span>`
    }<span class="unseen"> ${say('page.charges.of', { n: index + 1 })}</span>
  </button>`;
}

/** A sum below zero is no charge: it may be a credit, which lowers the charges. That is offered, never done unasked. */
function belowZero(d: Desk, index: number, typed: string): TemplateResult {
  const sum = money(amountFromTyping(withoutMinus(typed)));
  return html`<p class="fault" id="amount-${index}-fault">
    ${say('page.charges.belowZero')}
    <button type="button" class="link" @click=${() => d.makeCredit(index)}>${say('page.charges.makeCredit', { sum })}</button>
  </p>`;
}

function faults(d: Desk, index: number): TemplateResult | typeof nothing {
  const own = d.shownFaults.filter((f) => f.at === `/lines/${index}` || f.at === `/lines/${index}/amount`);
  if (own.length === 0) return nothing;
  const text = own.map((f) => faultText({ at: f.at, kind: 'money', label: '' }, f)).join(' ');
  const typed = d.typing.get(`/lines/${index}/amount`) ?? d.case.lines[index]?.amount;
  if (isBelowZero(typed)) return belowZero(d, index, String(typed));
  return html`<p class="fault" id="amount-${index}-fault">${text}</p>`;
}

/** What a landlord marks on the row itself: the year it was put in, the bill and the photo that will go along, the hours of own work. */
function marks(d: Desk, line: Line, index: number): TemplateResult {
  const proof = (line['supportingDocuments'] as string[] | undefined) ?? [];
  const mark = (id: string) => {
    const next = proof.includes(id) ? proof.filter((p) => p !== id) : [...proof, id];
    d.set(`/lines/${index}/supportingDocuments`, next.length ? next : undefined);
  };
  const small = (member: string) =>
    fieldsAt(d, [`/lines/${index}/${member}`]).map((f) =>
      field(d, { ...f, key: 'row', help: undefined, label: say(`page.charges.mark.${member}`) }),
    );
  return html`<div class="charge-marks" role="group" aria-label=${say('page.charges.mark', { n: index + 1 })}>
    ${small('installed')}
    ${['receipts', 'photos'].map(
      (id) =>
        html`<label class="check"><input type="checkbox" .checked=${live(proof.includes(id))} @change=${() => mark(id)} /><span>${say(`page.charges.mark.${id}`)}</span></label>`,
    )}
    ${small('hours')}
  </div>`;
}

export function charge(
  d: Desk,
  line: Line,
  index: number,
  judged: JudgedLine | undefined,
  outcome: Outcome | undefined,
  longest: number,
): TemplateResult {
  const real = d.case.lines[index] !== undefined;
  const isOpen = d.open.has(rowName(line.id)) && real;
  return html`<li class="charge" data-empty=${real ? nothing : 'yes'} data-outcome=${outcome ?? nothing}>
    <span class="charge-number" aria-hidden="true">${real ? index + 1 : ''}</span>
    ${words(d, line, index)} ${amount(d, line, index)} ${fair(line, judged, outcome)}
    <div class="charge-note">
      ${faults(d, index)} ${real ? opener(d, line, index, judged, outcome) : nothing}
      ${real ? wordMarks(d, line, index, judged) : nothing}
      ${real && d.side === 'landlord' ? marks(d, line, index) : nothing}
    </div>
    ${judged && line.amount ? wearLine(judged.claimed, judged.fair, longest) : nothing}
    <div class="charge-open" id="row-${line.id}" ?hidden=${!isOpen}>${isOpen ? (opened.get(d)?.rowOpened(d, line, index, judged) ?? nothing) : nothing}</div>
  </li>`;
}
