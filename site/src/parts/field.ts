// One fact to enter: its label, one sentence of help, the control, how it was read back, and what is wrong with it.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { live } from 'lit/directives/live.js';
import type { Desk } from '../app/desk';
import { canSay, language, say } from '../say/wording';
import type { Fault } from '../case/assessment';
import type { Named } from '../case/catalogue';
import { isDay } from '../case/day';
import { dateForField, dateWords, inWords } from '../say/date-words';
import { dateFromTyping, otherDay } from '../case/typed-date';
import { amountForField, amountFromTyping } from '../case/typed-money';

export type FieldKind = 'money' | 'date' | 'yes-no' | 'count' | 'years' | 'hours' | 'text' | 'choice';

export interface Field {
  /** JSON Pointer of the value in the case; for an event, the place where it would stand. */
  at: string;
  kind: FieldKind;
  label: string;
  help?: string;
  choices?: Named[];
  /** Set for an event of `events`, which has no place of its own until it is known. */
  event?: string;
  /** Set where the field is about how that event was sent, not when. */
  how?: true;
  /** Set where the same place has a second field on the page, to keep their ids apart. */
  key?: string;
  /** Suggestions for a text field. */
  suggest?: string[];
  /** Set where what is typed is saved on leaving the field or on Enter, not sign by sign; `entered` is called after Enter. */
  held?: { entered(control: HTMLElement): void };
}

const idOf = (f: Field): string =>
  `${f.key ?? 'f'}${(f.event ? `-event-${f.event}${f.how ? '-how' : ''}` : f.at).replace(/[^a-zA-Z0-9-]/g, '-')}`;
export const fieldId = idOf;

const valueOf = (d: Desk, f: Field): unknown =>
  f.event ? (f.how ? d.eventHow(f.event) : d.eventOn(f.event)) : d.valueAt(f.at);

function write(d: Desk, f: Field, value: unknown, coalesce = false): void {
  if (f.event && f.how) d.setEventHow(f.event, value as string | undefined);
  else if (f.event) d.setEvent(f.event, value as string | undefined);
  else d.set(f.at, value, coalesce);
}

function placeOf(d: Desk, f: Field): string {
  if (!f.event) return f.at;
  const i = d.case.events?.findIndex((e) => e.kind === f.event) ?? -1;
  return i < 0 ? '/events/-' : `/events/${i}/${f.how ? 'deliveryMethod' : 'date'}`;
}

export const faultsAt = (d: Desk, f: Field): Fault[] => {
  const at = placeOf(d, f);
  return d.shownFaults.filter((x) => x.at === at || x.at.startsWith(at + '/'));
};

const unreadable = new Set(['wrong-type', 'bad-amount', 'bad-date', 'bad-number']);

/** What is wrong, in the words of the field: how to write the value where it could not be read, else the engine's own sentence. */
export function faultText(f: Field, fault: Fault): string {
  const key = `page.fault.${f.kind}`;
  if (fault.code === 'amount-too-large') return say('page.fault.tooLarge');
  if (fault.code === 'bad-amount' && fault.text.includes('negative')) return say('page.fault.belowZero');
  return unreadable.has(fault.code) && canSay(key) ? say(key) : fault.text;
}

const numberFromTyping = (typed: string): number | string | undefined => {
  const text = typed.trim();
  return text === '' ? undefined : /^\d{1,4}(\.\d{1,3})?$/.test(text) ? Number(text) : text;
};

/** Where people write the day first, numbers alone may mean two days. */
const otherOf = (typed: string, day: unknown): string | undefined =>
  language() === 'en' ? undefined : otherDay(typed, day);
/** Until it is said which of two days is meant, it is a day between them. */
const between = (a: string, b: string): string => [a, b].sort().join('/');

/** Typed text as the value the case holds. */
function fromTyping(kind: FieldKind, typed: string): unknown {
  switch (kind) {
    case 'money':
      return amountFromTyping(typed);
    case 'date': {
      const day = dateFromTyping(typed, dateWords());
      const other = otherOf(typed, day);
      return other ? between(day!, other) : day;
    }
    case 'count': {
      const text = typed.trim();
      return text === '' ? undefined : /^\d{1,15}$/.test(text) ? Number(text) : text;
    }
    case 'years':
      return numberFromTyping(typed);
    case 'hours': {
      const count = numberFromTyping(typed);
      return count === undefined ? undefined : { count, unit: 'hour' };
    }
    default:
      return typed === '' ? undefined : typed;
  }
}

function forTyping(kind: FieldKind, value: unknown): string {
  if (value == null) return '';
  if (kind === 'money') return amountForField(value);
  if (kind === 'hours') return String((value as { count?: unknown }).count ?? '');
  return kind === 'date' ? dateForField(String(value)) : String(value);
}

interface Around {
  id: string;
  describedBy: string;
  invalid: boolean;
}

const modes: Partial<Record<FieldKind, string>> = {
  money: 'decimal',
  count: 'numeric',
  years: 'decimal',
  hours: 'decimal',
};

/** The text control of a field. Shown value: as typed while it has the focus, tidied afterwards. */
function typedControl(d: Desk, f: Field, a: Around): TemplateResult {
  const key = draftKey(d, f);
  return html`<input
    id=${a.id}
    class="entry entry-${f.kind}"
    type="text"
    inputmode=${modes[f.kind] ?? 'text'}
    autocomplete="off"
    spellcheck=${f.kind === 'text' ? 'true' : 'false'}
    list=${f.suggest?.length ? `${a.id}-list` : nothing}
    aria-describedby=${a.describedBy || nothing}
    aria-invalid=${a.invalid ? 'true' : nothing}
    .value=${live(d.typing.get(key) ?? forTyping(f.kind, valueOf(d, f)))}
    @input=${(e: Event) => {
      const typed = (e.target as HTMLInputElement).value;
      d.typing.set(key, typed);
      noteOther(d, f, typed);
      if (f.held) d.draw();
      else write(d, f, fromTyping(f.kind, typed), true);
    }}
    @change=${() => {
      commit(d, f);
      d.typing.delete(key);
      d.draw();
    }}
    @blur=${() => commit(d, f)}
    @keydown=${(e: KeyboardEvent) => {
      if (e.key !== 'Enter' || !f.held) return;
      e.preventDefault();
      commit(d, f);
      f.held.entered(e.currentTarget as HTMLElement);
    }}
  />${
    f.suggest?.length
      ? html`<datalist id="${a.id}-list">${f.suggest.map((s) => html`<option value=${s}></option>`)}</datalist>`
      : nothing
  }`;
}

/** What is being typed into the field, not saved yet; undefined where nothing is. */
const draftOf = (d: Desk, f: Field): string | undefined => (f.held ? d.typing.get(draftKey(d, f)) : undefined);
const draftKey = (d: Desk, f: Field): string => (f.held ? `held:${placeOf(d, f)}` : placeOf(d, f));

/** Days typed as numbers that could be read in two ways, by the field's place, the day first way first. */
const unsure = new Map<string, [string, string]>();

function noteOther(d: Desk, f: Field, typed: string): void {
  const day = f.kind === 'date' ? dateFromTyping(typed, dateWords()) : undefined;
  const other = otherOf(typed, day);
  if (other) unsure.set(placeOf(d, f), [other, day!]);
  else unsure.delete(placeOf(d, f));
}

/** Asks which of two days is meant. */
function askWhich(d: Desk, f: Field): TemplateResult | typeof nothing {
  const days = unsure.get(placeOf(d, f));
  if (!days || valueOf(d, f) !== between(...days)) return nothing;
  const settle = (day: string) => () => {
    unsure.delete(placeOf(d, f));
    write(d, f, day);
  };
  return html`<span class="which-day">
    ${days.map((day) => html` <button type="button" class="link" @click=${settle(day)}>${say('page.field.orDay', { day: inWords(day) })}</button>`)}</span
  >`;
}

/** Saves what was typed into a held field. */
function commit(d: Desk, f: Field): void {
  const typed = draftOf(d, f);
  if (typed === undefined) return;
  d.typing.delete(draftKey(d, f));
  write(d, f, fromTyping(f.kind, typed));
}

const showCalendar = (e: Event): void =>
  (e.currentTarget as HTMLElement)
    .closest('.date-entry')
    ?.querySelector<HTMLInputElement>('input[type=date]')
    ?.showPicker?.();

function dateControl(d: Desk, f: Field, a: Around): TemplateResult {
  const value = valueOf(d, f);
  // Who types needs no calendar: it is no stop of the Tab key. Alt and the arrow down open it, as they open any list.
  const keyed = (e: KeyboardEvent): void => {
    if (!e.altKey || e.key !== 'ArrowDown') return;
    e.preventDefault();
    showCalendar(e);
  };
  return html`<span class="date-entry" @keydown=${keyed}>
    ${typedControl(d, f, a)}
    <span class="calendar">
      <input
        type="date"
        tabindex="-1"
        aria-hidden="true"
        .value=${live(isDay(value) ? value : '')}
        @change=${(e: Event) => {
          d.typing.delete(draftKey(d, f));
          write(d, f, (e.target as HTMLInputElement).value || undefined);
        }}
      />
      <button
        type="button"
        class="icon"
        tabindex="-1"
        aria-label=${say('page.field.calendar', { what: f.label })}
        @click=${showCalendar}
      >
        <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
          <path d="M2 3.5h12v10.5H2zM2 6.5h12M5 1.5v3M11 1.5v3" fill="none" stroke="currentColor" stroke-width="1.3" />
        </svg>
      </button>
    </span>
  </span>`;
}

function choiceControl(d: Desk, f: Field, a: Around): TemplateResult {
  const value = String(valueOf(d, f) ?? '');
  return html`<select
    id=${a.id}
    class="entry"
    aria-describedby=${a.describedBy || nothing}
    aria-invalid=${a.invalid ? 'true' : nothing}
    @change=${(e: Event) => write(d, f, (e.target as HTMLSelectElement).value || undefined)}
  >
    <option value="" .selected=${live(value === '')}>${say('page.field.unknown')}</option>
    ${f.choices?.map((c) => html`<option value=${c.id} .selected=${live(c.id === value)}>${c.label}</option>`)}
    ${value && !f.choices?.some((c) => c.id === value) ? html`<option value=${value} selected>${value}</option>` : nothing}
  </select>`;
}

/** A row of words of which one is chosen. Used for yes / no / not known and for which side a person is on. */
export function oneOf(name: string, options: Named[], chosen: string, choose: (id: string) => void): TemplateResult {
  return html`<span class="one-of"
    >${options.map(
      (o) => html`<label class="one-of-word"
        ><input
          type="radio"
          name=${name}
          value=${o.id}
          .checked=${live(o.id === chosen)}
          @change=${() => choose(o.id)}
        /><span>${o.label}</span></label
      >`,
    )}</span
  >`;
}

const yesNo = (): Named[] => [
  { id: 'yes', label: say('page.yes') },
  { id: 'no', label: say('page.no') },
  { id: '', label: say('page.notKnown') },
];

export const triWord = (value: unknown): string => (value === true ? 'yes' : value === false ? 'no' : '');
export const triValue = (word: string): boolean | undefined =>
  word === 'yes' ? true : word === 'no' ? false : undefined;

/** A question answered yes, no or not known, wherever the answer is kept. */
export function yesNoField(
  id: string,
  label: string | TemplateResult,
  value: unknown,
  choose: (value: boolean | undefined) => void,
  help = '',
): TemplateResult {
  return html`<fieldset class="field field-yes-no" aria-describedby=${help ? `${id}-help` : nothing}>
    <legend>${label}</legend>
    ${help ? html`<p class="help" id="${id}-help">${help}</p>` : nothing}
    ${oneOf(id, yesNo(), triWord(value), (w) => choose(triValue(w)))}
  </fieldset>`;
}

/** A whole field. */
export function field(d: Desk, f: Field): TemplateResult {
  const id = idOf(f);
  const faults = faultsAt(d, f);
  if (f.kind === 'yes-no') {
    return html`<div id=${id} class="field-box">
      ${yesNoField(`${id}-choice`, f.label, valueOf(d, f), (v) => write(d, f, v), f.help)}${faultList(f, id, faults)}
    </div>`;
  }
  const draft = draftOf(d, f);
  const value = draft === undefined ? valueOf(d, f) : fromTyping(f.kind, draft);
  const unread = d.sheet.faults.some((x) => x.at === placeOf(d, f));
  const read = f.kind === 'date' && !unread ? inWords(value) : '';
  const describedBy = [f.help && `${id}-help`, read && `${id}-read`, faults.length && `${id}-fault`]
    .filter(Boolean)
    .join(' ');
  const around = { id, describedBy, invalid: faults.length > 0 };
  return html`<div class="field field-${f.kind}">
    <label for=${id}>${f.label}</label>
    ${f.help ? html`<p class="help" id="${id}-help">${f.help}</p>` : nothing}
    ${f.kind === 'date' ? dateControl(d, f, around) : f.kind === 'choice' ? choiceControl(d, f, around) : typedControl(d, f, around)}
    ${read ? html`<p class="read-back"><span id="${id}-read">${read}</span>${askWhich(d, f)}</p>` : nothing} ${faultList(f, id, faults)}
  </div>`;
}

function faultList(f: Field, id: string, faults: Fault[]): TemplateResult | typeof nothing {
  return faults.length
    ? html`<p class="fault" id="${id}-fault">${[...new Set(faults.map((x) => faultText(f, x)))].join(' ')}</p>`
    : nothing;
}
