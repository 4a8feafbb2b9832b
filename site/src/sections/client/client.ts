// Whom an adviser helps: one line with the case, private, never in what is handed out. With it the words on what is kept, and a blank
// sheet to take the facts down on paper.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { live } from 'lit/directives/live.js';
import type { Desk } from '../../app/desk';
import type { Client } from '../../case/client';
import { dateFromTyping } from '../../case/typed-date';
import { dateForField, dateWords } from '../../say/date-words';
import { shortDay } from '../../say/show';
import { say } from '../../say/wording';
import { foldedSection } from '../../parts/fold';
import './client.css';

const members = ['name', 'contact', 'language', 'next', 'outcome'] as const;

const put = (d: Desk, change: Partial<Client>): void => d.editClient({ ...d.sheet.client, ...change });

/** What was typed as the next day, while it is no day yet. */
let typedDay = '';

function entry(d: Desk, m: (typeof members)[number]): TemplateResult {
  const held = d.sheet.client[m];
  const isDay = m === 'next';
  const write = (typed: string) => {
    if (!isDay) return put(d, { [m]: typed });
    const day = dateFromTyping(typed, dateWords());
    const read = typeof day === 'string' && /^\d{4}-\d\d-\d\d$/.test(day) ? day : '';
    typedDay = typed;
    put(d, { next: read });
  };
  return html`<div class="field">
    <label for="client-${m}">${say(`page.client.${m}`)}</label>
    <input
      id="client-${m}"
      class="entry"
      type="text"
      autocomplete="off"
      enterkeyhint="next"
      .value=${live(isDay ? typedDay || (held && dateForField(held)) : held)}
      @input=${(e: Event) => write((e.target as HTMLInputElement).value)}
      @change=${() => {
        typedDay = '';
        d.draw();
      }}
    />
  </div>`;
}

function inShort(c: Client): string {
  const next = c.next ? say('page.client.short.next', { day: shortDay(c.next) }) : '';
  return [c.name, next, c.outcome].filter(Boolean).join(' · ');
}

/** Questions of the sheet, in the order they are asked at a desk. */
const asked = ['place', 'in', 'out', 'end', 'address', 'deposit', 'back', 'list', 'sent', 'charges', 'papers', 'wants'];

/** A sheet to fill in by hand: no names on it but those the client writes. */
const intake = (): TemplateResult =>
  html`<section class="intake" aria-hidden="true">
    <h2>${say('page.client.intake.title')}</h2>
    <p>${say('page.client.consent')}</p>
    ${asked.map((q) => html`<p class="intake-line">${say(`page.client.intake.${q}`)}</p>`)}
  </section>`;

function printIntake(d: Desk): void {
  d.folds.add('intake');
  d.draw();
  void Promise.resolve().then(() => {
    d.printOnly('intake');
    d.folds.delete('intake');
    d.draw();
  });
}

export function client(d: Desk): TemplateResult | typeof nothing {
  if (d.side !== 'adviser') return nothing;
  const c = d.sheet.client;
  return html`<div class="client-case">
    ${foldedSection(
      d,
      'client',
      say('page.client.title'),
      () =>
        html`<p class="help">${say('page.client.private')}</p>
          <div class="fields">${members.map((m) => entry(d, m))}</div>
          <div class="field">
            <label for="client-note">${say('page.client.note')}</label>
            <textarea id="client-note" class="entry" rows="3" .value=${live(c.note)} @input=${(e: Event) => put(d, { note: (e.target as HTMLTextAreaElement).value })}></textarea>
          </div>
          <p class="client-caution">${say('page.client.caution')}</p>
          <p class="client-consent">${say('page.client.consent')}</p>
          <p><button type="button" class="tool" @click=${() => printIntake(d)}>${say('page.client.intake')}</button></p>`,
      inShort(c),
    )}
    ${d.folds.has('intake') ? intake() : nothing}
  </div>`;
}
