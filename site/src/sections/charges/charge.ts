// One row of the ledger: the charge as worded, its sum, the fair sum, and Wearline's note. It opens to the facts and the steps.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { live } from 'lit/directives/live.js';
import type { Desk } from '../../app/desk';
import { later } from '../../app/later';
import { money } from '../../say/show';
import { say } from '../../say/wording';
import type { JudgedLine } from '../../case/assessment';
import type { Line } from '../../case/case';
import { amountForField, amountFromTyping } from '../../case/typed-money';
import { faultText } from '../../parts/field';
import { verdictMark } from '../../parts/mark';
import { wearLine } from '../../parts/wear-line';

const facts = later(() => import('./line-facts'));
const steps = later(() => import('./line-steps'));

/** Fetches what a charge opens to, so that opening does not wait. */
export const fetchAhead = (): Promise<unknown> => Promise.all([facts.fetch(), steps.fetch()]);

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

function words(d: Desk, line: Line, index: number): TemplateResult {
  const text = String(line.text ?? '');
  return html`<span class="grow" data-text=${text}
    ><textarea
      id="text-${index}"
      rows="1"
      class="charge-text"
      aria-label=${say('page.charges.text', { n: index + 1 })}
      placeholder=${d.case.lines[index] ? nothing : say('page.charges.placeholder')}
      .value=${live(text)}
      @input=${(e: Event) => write(d, line, index, 'text', (e.target as HTMLTextAreaElement).value || undefined)}
      @keydown=${(e: KeyboardEvent) => next(e, `amount-${index}`)}
    ></textarea
  ></span>`;
}

function amount(d: Desk, line: Line, index: number): TemplateResult {
  const at = `/lines/${index}/amount`;
  const wrong = d.sheet.faults.some((f) => f.at === at);
  return html`<input
    id="amount-${index}"
    class="charge-amount"
    type="text"
    inputmode="decimal"
    autocomplete="off"
    aria-label=${say('page.charges.amount', { n: index + 1 })}
    aria-invalid=${wrong ? 'true' : nothing}
    aria-describedby=${wrong ? `amount-${index}-fault` : nothing}
    .value=${live(d.typing.get(at) ?? amountForField(line.amount))}
    @input=${(e: Event) => {
      const typed = (e.target as HTMLInputElement).value;
      d.typing.set(at, typed);
      write(d, line, index, 'amount', amountFromTyping(typed));
    }}
    @change=${() => {
      d.typing.delete(at);
      d.draw();
    }}
    @keydown=${(e: KeyboardEvent) => next(e, `text-${index + 1}`)}
  />`;
}

/** The fair sum. It opens to the steps that led there. */
function fair(d: Desk, line: Line, judged: JudgedLine | undefined, longest: number): TemplateResult | typeof nothing {
  if (!judged || !line.amount) return nothing;
  const { low, likely, high } = judged.fair;
  const range = low === high ? '' : say('page.charges.range', { low: bare(low), high: bare(high) });
  const name = `steps:${line.id}`;
  return html`<button
      type="button"
      class="charge-fair"
      data-word=${say('page.charges.fairWord')}
      aria-expanded=${d.open.has(name) ? 'true' : 'false'}
      aria-controls="steps-${line.id}"
      @click=${() => d.toggle(name)}
    >
      <span class="unseen">${say('page.charges.fairWord')}</span>
      <span class="figure">${bare(likely)}</span>
      ${range ? html`<span class="range">${range}</span>` : nothing}
      <span class="unseen">${say('page.charges.showHow')}</span>
    </button>
    ${wearLine(judged.claimed, judged.fair, longest)}`;
}

function note(judged: JudgedLine): TemplateResult {
  const read = judged.recognised && judged.element ? [judged.thing, judged.findingText].filter(Boolean).join(': ') : '';
  return html`<p class="note">
    ${verdictMark(judged.verdict)}
    <span><strong>${judged.verdictText}.</strong> ${judged.why}${read ? html` <em>${say('page.charges.readAs', { what: read })}</em>` : nothing}</span>
  </p>`;
}

function opener(d: Desk, line: Line, index: number, judged: JudgedLine | undefined): TemplateResult {
  const name = `facts:${line.id}`;
  const isOpen = d.open.has(name);
  const words = isOpen
    ? 'page.charges.close'
    : judged?.certain === false
      ? 'page.charges.addFacts'
      : 'page.charges.facts';
  return html`<button
    type="button"
    class="link charge-opener"
    aria-expanded=${isOpen ? 'true' : 'false'}
    aria-controls="facts-${line.id}"
    @click=${() => d.toggle(name)}
  >
    ${say(words)}<span class="unseen"> ${say('page.charges.of', { n: index + 1 })}</span>
  </button>`;
}

function tools(d: Desk, index: number): TemplateResult {
  const last = d.case.lines.length - 1;
  const tool = (name: string, act: () => void, disabled = false) =>
    html`<button type="button" class="link" ?disabled=${disabled} @click=${act}>${say(`page.charges.${name}`)}</button>`;
  return html`<div class="charge-tools">
    ${tool('up', () => d.moveLine(index, -1), index === 0)} ${tool('down', () => d.moveLine(index, 1), index === last)}
    ${tool('copy', () => d.duplicateLine(index))} ${tool('remove', () => d.removeLine(index))}
  </div>`;
}

function faults(d: Desk, index: number): TemplateResult | typeof nothing {
  const own = d.sheet.faults.filter((f) => f.at === `/lines/${index}` || f.at === `/lines/${index}/amount`);
  if (own.length === 0) return nothing;
  const text = own.map((f) => faultText({ at: f.at, kind: 'money', label: '' }, f)).join(' ');
  return html`<p class="fault" id="amount-${index}-fault">${text}</p>`;
}

export function charge(
  d: Desk,
  line: Line,
  index: number,
  judged: JudgedLine | undefined,
  longest: number,
): TemplateResult {
  const real = d.case.lines[index] !== undefined;
  const showsSteps = d.open.has(`steps:${line.id}`) && judged !== undefined;
  const showsFacts = d.open.has(`facts:${line.id}`) && real;
  return html`<li class="charge" data-empty=${real ? nothing : 'yes'}>
    <span class="charge-number" aria-hidden="true">${real ? index + 1 : ''}</span>
    ${words(d, line, index)} ${amount(d, line, index)}
    <span class="charge-result">${fair(d, line, judged, longest)}</span>
    <div class="charge-note">
      ${faults(d, index)} ${judged ? note(judged) : nothing} ${real ? opener(d, line, index, judged) : nothing}
    </div>
    <div class="charge-open" id="steps-${line.id}" ?hidden=${!showsSteps}>${showsSteps ? (steps.get(d)?.lineSteps(d, judged) ?? nothing) : nothing}</div>
    <div class="charge-open" id="facts-${line.id}" ?hidden=${!showsFacts}>
      ${showsFacts ? html`${facts.get(d)?.lineFacts(d, line, index) ?? nothing}${tools(d, index)}` : nothing}
    </div>
  </li>`;
}
