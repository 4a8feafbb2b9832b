// The facts that decide: who is looking, where the home is, when it was left, what was held and what came back, then what starts the
// days of that place. Once they are known they fold to one line.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { live } from 'lit/directives/live.js';
import type { Desk, Sheet } from '../../app/desk';
import { clocksOf, nameOfPlace, places } from '../../engine/rules';
import { inWords } from '../../say/date-words';
import { money, shortDay } from '../../say/show';
import { say } from '../../say/wording';
import { isDay } from '../../case/day';
import type { Side } from '../../case/case';
import { endWalk, isWalking, startWalk } from '../../case/walk';
import { type Basic, deciding, livesThere } from '../../case/next-step';
import { fieldsAt } from '../../parts/fields';
import { field, type Field, oneOf } from '../../parts/field';
import { townHelp, townsOf } from './localities';
import './standing.css';

const sides: Side[] = ['tenant', 'adviser', 'landlord'];
/** A tenant who still lives there is a tenant whose home is walked through. */
type Stands = Side | 'living-there';
const standsAs = (d: Desk): Stands => (d.side === 'tenant' && isWalking(d.case) ? 'living-there' : d.side);

function standAs(d: Desk, as: Stands): void {
  if (as === 'living-there') d.put(startWalk(d.case, 'tenant'));
  else if (as === 'tenant' && isWalking(d.case)) d.put(endWalk(d.case, d.today, 'tenant'));
  else d.set('/side', as);
}

/** Nobody has left yet: nothing can have come back. */
const beforeLeaving = (d: Desk): boolean => isWalking(d.case) || livesThere(d.case, d.today);
const sideKey = (d: Desk): string => (d.side === 'landlord' ? 'landlord' : 'tenant');

/** Cases whose facts are being entered: they stay unfolded until the person is done. */
const entering = new WeakSet<Sheet>();
/** Cases in which something came back, though its sum is not known yet. */
const cameSome = new WeakSet<Sheet>();

const movedOut = '/tenancy/possessionReturned';
const deposit = '/deposits/0/amount';
const refund = '/statement/refundPaid';

/** What must be known before they fold; a landlord who sends a list, and a tenant still living there, have paid or got nothing yet. */
const needed = (d: Desk): string[] =>
  isWalking(d.case)
    ? [movedOut]
    : livesThere(d.case, d.today)
      ? [deposit]
      : d.side === 'landlord'
        ? [movedOut, deposit]
        : [movedOut, deposit, refund];
const isComplete = (d: Desk): boolean =>
  Boolean(d.case.jurisdiction) && needed(d).every((at) => d.valueAt(at) !== undefined);

function placeField(d: Desk): TemplateResult {
  const options = (country: string) =>
    places()
      .filter((p) => p.code.startsWith(country))
      .map((p) => html`<option value=${p.code} .selected=${live(p.code === d.case.jurisdiction)}>${p.name}</option>`);
  return html`<div class="field standing-place">
    <label for="place">${say('page.standing.place')}</label>
    <select id="place" class="entry" @change=${(e: Event) => d.set('/jurisdiction', (e.target as HTMLSelectElement).value || undefined)}>
      <option value="" .selected=${live(!d.case.jurisdiction)}>${say('page.standing.noPlace')}</option>
      <optgroup label=${say('page.standing.us')}>${options('US-')}</optgroup>
      <optgroup label=${say('page.standing.ca')}>${options('CA-')}</optgroup>
    </select>
  </div>`;
}

const isNothing = (paid: unknown): boolean => /^0+(\.0*)?$/.test(String(paid));

/** Whether anything came back: nothing, or a sum and its day. */
function cameBack(d: Desk): TemplateResult {
  const paid = d.valueAt(refund);
  const some = cameSome.has(d.sheet) || (paid !== undefined && !isNothing(paid));
  const chosen = some ? 'some' : paid === undefined ? '' : 'none';
  const choose = (id: string) => {
    if (id === 'some') {
      cameSome.add(d.sheet);
      d.set(refund, undefined);
    } else {
      cameSome.delete(d.sheet);
      d.set(refund, '0.00');
    }
  };
  const options = ['none', 'some'].map((id) => ({ id, label: say(`page.standing.back.${id}`) }));
  return html`<div class="field standing-back" role="radiogroup" aria-labelledby="back-asks">
      <span class="field-asks" id="back-asks">${say(`page.standing.back.${sideKey(d)}`)}</span>
      ${oneOf('back', options, chosen, choose)}
    </div>
    ${some ? fieldsAt(d, [refund, '/statement/refundSent']).map((f) => field(d, f)) : nothing}`;
}

/** What starts the days of the place, beside the day of moving out, and when the list was sent: events that have a field of their own here. */
function clocks(d: Desk): Field[] {
  const starts = clocksOf(d.case.jurisdiction).flatMap((id) => d.catalogue.events.find((e) => e.id === id)?.at ?? []);
  const came = d.valueAt('/statement/statementReceived');
  const list = [
    ...(d.case.lines.length === 0 ? ['/statement/statementReceived'] : []),
    ...(came === false ? [] : ['/statement/sent']),
  ];
  const isTheirs = d.side === 'landlord' || beforeLeaving(d);
  const places = [...(isTheirs ? [] : list), ...starts].filter((at) => at !== movedOut);
  return fieldsAt(d, [...new Set(places)]);
}

const isOpen = (d: Desk, f: Field): boolean => d.valueAt(f.at) === undefined;

/** The facts of that kind that are not known, as places of the case. */
export const openClocks = (d: Desk): string[] =>
  clocks(d)
    .filter((f) => isOpen(d, f))
    .map((f) => f.at);

/** The field for one of them, asked as a whole question. */
export function clockField(d: Desk, at: string): Field | undefined {
  const event = d.catalogue.events.find((e) => e.at === at);
  const own = fieldsAt(d, [at])[0];
  return own && { ...own, label: event?.question ?? own.label, help: undefined };
}

/** The lease often ends on the day the keys go back: one press instead of a date typed twice. */
function sameDay(d: Desk, f: Field): TemplateResult | typeof nothing {
  const out = d.valueAt(movedOut);
  if (f.at !== '/tenancy/ended' || !isOpen(d, f) || !isDay(out)) return nothing;
  return html`<button type="button" class="link standing-same" @click=${() => d.set(f.at, out)}>${say('page.standing.sameDay')}</button>`;
}

/** A landlord, or who helps a tenant, may walk through the home before the end too. */
function walkDoor(d: Desk): TemplateResult | typeof nothing {
  if (d.side === 'tenant' || d.case.lines.length > 0) return nothing;
  const walking = isWalking(d.case);
  const go = () => d.put(walking ? endWalk(d.case, d.today) : startWalk(d.case));
  return html`<p class="standing-walk"><button type="button" class="link" @click=${go}>${say(walking ? 'page.standing.walk.end' : 'page.standing.walk')}</button></p>`;
}

function unfolded(d: Desk): TemplateResult {
  const towns = townsOf(d);
  const town = townHelp(d);
  return html`<fieldset class="field standing-side">
      <legend>${say('page.standing.who')}</legend>
      ${oneOf(
        'side',
        [...sides, 'living-there'].map((id) => ({ id, label: say(`page.side.${id}`) })),
        standsAs(d),
        (id) => standAs(d, id as Stands),
      )}
    </fieldset>
    ${walkDoor(d)}
    ${placeField(d)}
    ${
      towns.length || d.case.locality
        ? html`<div class="standing-clock">${field(d, { at: '/locality', kind: 'text', label: say('page.standing.town'), suggest: towns })}${town ? html`<p class="help standing-town">${town}</p>` : nothing}</div>`
        : nothing
    }
    ${fieldsAt(d, [movedOut, deposit]).map((f) => field(d, isWalking(d.case) && f.at === movedOut ? { ...f, label: say('page.standing.movingOut'), help: undefined } : f))} ${d.blank || beforeLeaving(d) ? nothing : cameBack(d)}
    ${d.blank ? nothing : clocks(d).map((f) => html`<div class="standing-clock">${field(d, f)}${sameDay(d, f)}</div>`)}
    ${
      isComplete(d)
        ? html`<p class="standing-done"><button type="button" class="tool" @click=${() => foldUp(d)}>${say('page.standing.done')}</button></p>`
        : nothing
    }`;
}

function foldUp(d: Desk): void {
  entering.delete(d.sheet);
  d.draw();
  void Promise.resolve().then(() => document.getElementById('facts-change')?.focus());
}

const fieldOfFact: Record<Basic, string> = {
  place: '#place',
  'moved-out': '#f-tenancy-possessionReturned',
  deposit: '#f-deposits-0-amount',
  'came-back': '.standing-back input',
};

/** Unfolds the facts and puts the cursor on one. */
export function goToFact(d: Desk, what: Basic): void {
  entering.add(d.sheet);
  d.draw();
  void Promise.resolve().then(() => document.querySelector<HTMLElement>(fieldOfFact[what])?.focus());
}

const change = (d: Desk): void => goToFact(d, 'place');

const briefly = (day: unknown): string => (isDay(day) ? shortDay(day) : inWords(day));

function folded(d: Desk): TemplateResult {
  const back = d.valueAt(refund);
  const decide = d.result ? deciding(d.result, openClocks(d)) : [];
  const open = clocks(d).filter((f) => decide.includes(f.at));
  const parts = [
    say(`page.side.${standsAs(d)}`),
    [nameOfPlace(d.case.jurisdiction), d.case.locality].filter(Boolean).join(', '),
    say(isWalking(d.case) ? 'page.standing.line.leaving' : 'page.standing.line.out', {
      day: briefly(d.valueAt(movedOut) ?? d.valueAt('/tenancy/ended')),
    }),
    d.valueAt(deposit) === undefined
      ? ''
      : say('page.standing.line.held', { sum: money(d.result?.totals.deposit ?? String(d.valueAt(deposit))) }),
    back === undefined
      ? ''
      : isNothing(back)
        ? say('page.standing.line.nothingBack')
        : say('page.standing.line.back', { sum: money(String(back)) }),
  ].filter(Boolean);
  return html`<p class="standing-line">
      ${parts.map((p, i) => html`${i ? ' · ' : nothing}<span>${p}</span>`)}
      <button type="button" class="link" id="facts-change" @click=${() => change(d)}>${say('page.standing.change')}<span class="unseen"> ${say('page.standing.label')}</span></button>
    </p>
    ${
      open.length
        ? html`<p class="standing-open">${say('page.standing.open', { what: open.map((f) => f.label).join(', ') })}
          <button type="button" class="link" @click=${() => change(d)}>${say('page.standing.fillIn')}</button></p>`
        : nothing
    }`;
}

export function standing(d: Desk): TemplateResult {
  if (!isComplete(d)) entering.add(d.sheet);
  const isFolded = !entering.has(d.sheet);
  return html`<section class="standing" data-folded=${isFolded ? 'yes' : nothing} aria-label=${say('page.standing.label')}>
    ${isFolded ? folded(d) : unfolded(d)}
  </section>`;
}
