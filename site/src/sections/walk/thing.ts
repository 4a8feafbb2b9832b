// One thing in a room: its state by one tap, then what is wrong with it, how that came about, how old it is, and a photo.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { live } from 'lit/directives/live.js';
import type { Desk } from '../../app/desk';
import { elementOf } from '../../case/catalogue';
import type { Room, Seen, WalkItem } from '../../case/walk';
import { thingIn, thingsOf, withoutThing, withState, withThing } from '../../case/walk-edits';
import { faultsOf, hazardsOf, statesOf } from '../../case/walk-home';
import { walkOf } from '../../case/walk-edits';
import { field, type Field } from '../../parts/field';
import { spoken } from '../../say/spoken';
import { say } from '../../say/wording';
import { elementName, findingName, momentOf, photosOf, roomName, sayState } from './names';
import { photograph } from './photo';

type Column = 'conditionAtMoveIn' | 'conditionAtMoveOut';

/** The five states as a row of words, one tap each. */
function states(d: Desk, room: Room, element: string, t: WalkItem | undefined, column: Column): TemplateResult {
  const group = `${room.id}-${element}-${column}`;
  const what = `${elementName(d, element)}, ${roomName(room)}`;
  const choose = (s: Seen) =>
    d.put(
      column === 'conditionAtMoveOut'
        ? withState(d.case, room.id, element, s, d.today)
        : withThing(d.case, room.id, element, { conditionAtMoveIn: s }),
    );
  return html`<div class="walk-states" role="radiogroup" aria-label=${say(column === 'conditionAtMoveOut' ? 'page.walk.state.out' : 'page.walk.state.in', { what })}>
    ${statesOf(element).map(
      (s) =>
        html`<label class="walk-state" data-state=${s}><input type="radio" name=${group} value=${s} .checked=${live(t?.[column] === s)} @change=${() => choose(s)} /><span>${sayState(s)}</span></label>`,
    )}
  </div>`;
}

/** A finger chooses once and goes on; arrow keys choose at every step, so for them the list stays. */
let byPointer = false;

/** The faults that belong to the state, until one is chosen; then that one, and a way back to the rest. */
function faults(d: Desk, t: WalkItem): TemplateResult | typeof nothing {
  const ids = faultsOf(t.element, t.conditionAtMoveOut);
  if (ids.length === 0) return nothing;
  const name = `walk-fault:${t.id}`;
  const change = `walk-change-${t.id}`;
  if (t.finding && !d.open.has(name))
    return html`<p class="walk-chosen">
      ${findingName(d, t.element, t.finding)}
      <button type="button" class="link" id=${change} @click=${() => d.toggle(name)}>${say('page.walk.fault.change')}<span class="unseen"> ${elementName(d, t.element)}</span></button>
    </p>`;
  const choose = (finding: string) => {
    if (byPointer) d.open.delete(name);
    else d.open.add(name);
    d.put(withThing(d.case, t.room, t.element, { finding }));
    if (byPointer) void Promise.resolve().then(() => document.getElementById(change)?.focus({ preventScroll: true }));
    byPointer = false;
  };
  const findings = elementOf(d.catalogue, t.element)?.findings ?? [];
  return html`<fieldset class="walk-faults" @pointerdown=${() => (byPointer = true)} @keydown=${() => (byPointer = false)}>
    <legend>${say('page.walk.fault')}</legend>
    ${ids.map((id) => {
      const f = findings.find((x) => x.id === id);
      return html`<label class="walk-fault"
        ><input type="radio" name="walk-fault-${t.id}" value=${id} .checked=${live(t.finding === id)} @change=${() => choose(id)} />
        <span>${f?.label ?? id} <small>${f?.description ?? ''}</small></span></label
      >`;
    })}
  </fieldset>`;
}

const causes = ['tenant', 'pet', 'age', 'building', ''] as const;

function cause(d: Desk, t: WalkItem): TemplateResult {
  return html`<div class="field walk-cause">
    <label for="walk-cause-${t.id}">${say('page.walk.cause')}</label>
    <select id="walk-cause-${t.id}" class="entry" @change=${(e: Event) => d.put(withThing(d.case, t.room, t.element, { cause: (e.target as HTMLSelectElement).value || undefined }))}>
      ${causes.map((c) => html`<option value=${c} .selected=${live((t.cause ?? '') === c)}>${say(`page.walk.cause.${c || 'unknown'}`)}</option>`)}
    </select>
  </div>`;
}

/** A field for a member of a thing; `held`: saved on leaving it, for what changes the order of the list it stands in. */
function thingField(
  d: Desk,
  t: WalkItem,
  member: keyof WalkItem,
  kind: Field['kind'],
  label: string,
  help?: string,
  held = false,
): TemplateResult {
  const index = thingsOf(d.case).findIndex((x) => x.id === t.id);
  const at = `/walkThrough/items/${index}/${member}`;
  return field(d, { at, kind, label, help, ...(held && { held: { entered: () => undefined } }) });
}

const installed = (d: Desk, t: WalkItem): TemplateResult =>
  thingField(d, t, 'installed', 'date', say('page.walk.installed'), say('page.walk.installed.help'));

export const quote = (d: Desk, t: WalkItem): TemplateResult =>
  thingField(d, t, 'quote', 'money', say('page.walk.quote'), say('page.walk.quote.help'), true);

/** A short line of warning at the thing itself. */
export const dangers = (d: Desk, t: WalkItem): TemplateResult[] =>
  hazardsOf(t, walkOf(d.case)).map((h) => html`<p class="walk-hazard">${spoken(h.text)}</p>`);

function photoLine(d: Desk, t: WalkItem | undefined): string {
  const photos = photosOf(d, t);
  const last = photos[photos.length - 1];
  if (!last) return '';
  return photos.length === 1
    ? say('page.walk.photos.one', { when: momentOf(last) })
    : say('page.walk.photos', { count: photos.length, when: momentOf(last) });
}

/** Ordinary wear costs nothing: how it came about and how old it is need not be asked. */
const mayCost = (t: WalkItem): boolean =>
  t.conditionAtMoveOut !== undefined && t.conditionAtMoveOut !== 'fine' && t.conditionAtMoveOut !== 'worn';

export function thing(d: Desk, room: Room, element: string, bothColumns: boolean): TemplateResult {
  const t = thingIn(d.case, room.id, element);
  const isWrong = t?.conditionAtMoveOut !== undefined && t.conditionAtMoveOut !== 'fine';
  const more = `walk-more:${room.id}-${element}`;
  const isOpen = d.open.has(more);
  const of = html`<span class="unseen"> ${say('page.walk.photo.of', { what: elementName(d, element) })}</span>`;
  return html`<li class="walk-thing" data-seen=${t?.conditionAtMoveOut ?? nothing}>
    <div class="walk-thing-head">
      <h4>${elementName(d, element)}</h4>
      ${photograph(d, html`${say('page.walk.photo')}${of}`, () => thingFor(d, room, element))}
      <button type="button" class="walk-more" aria-expanded=${isOpen ? 'true' : 'false'} @click=${() => d.toggle(more)}>${say(isOpen ? 'page.walk.less' : 'page.walk.more')}${of}</button>
    </div>
    ${
      bothColumns
        ? html`<div class="walk-columns">
            <span class="walk-column" aria-hidden="true">${say('page.walk.in')}</span>${states(d, room, element, t, 'conditionAtMoveIn')}
            <span class="walk-column" aria-hidden="true">${say('page.walk.out')}</span>${states(d, room, element, t, 'conditionAtMoveOut')}
          </div>`
        : states(d, room, element, t, 'conditionAtMoveOut')
    }
    ${photoLine(d, t) ? html`<p class="walk-photos">${photoLine(d, t)}</p>` : nothing}
    ${
      t && isWrong
        ? html`<div class="walk-about">${faults(d, t)}
            ${mayCost(t) ? html`<div class="fields">${cause(d, t)}${installed(d, t)}</div>` : nothing}
            ${dangers(d, t)}</div>`
        : nothing
    }
    ${
      isOpen
        ? html`<div class="walk-about fields">
            ${t && !mayCost(t) ? installed(d, t) : nothing}
            ${t ? thingField(d, t, 'note', 'text', say('page.walk.note')) : nothing}
            ${t ? html`<p><button type="button" class="tool" @click=${() => d.put(withoutThing(d.case, room.id, element))}>${say('page.walk.thing.remove')}${of}</button></p>` : html`<p class="help">${elementOf(d.catalogue, element)?.covers ?? ''}</p>`}
          </div>`
        : nothing
    }
  </li>`;
}

/** The thing as it is written down; a photo alone writes it down. */
function thingFor(d: Desk, room: Room, element: string): WalkItem {
  if (!thingIn(d.case, room.id, element)) d.put(withThing(d.case, room.id, element, { inspected: d.today }));
  return thingIn(d.case, room.id, element)!;
}
