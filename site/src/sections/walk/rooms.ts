// The rooms of the home, one open at a time, each with the things a person meets in it.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Desk } from '../../app/desk';
import type { Room } from '../../case/walk';
import {
  countAll,
  countIn,
  roomsOf,
  rowsOf,
  thingsOf,
  walkOf,
  withRestFine,
  withRoomNamed,
  withRoom,
  withoutRoom,
  withThing,
  withWalk,
} from '../../case/walk-edits';
import { allThings, kindOfRoom, roomKinds } from '../../case/walk-home';
import { fieldsAt } from '../../parts/fields';
import { field, oneOf, triValue, triWord } from '../../parts/field';
import { spoken } from '../../say/spoken';
import { say } from '../../say/wording';
import { elementName, roomName } from './names';
import { thing } from './thing';

const usual = ['living-room', 'bedroom', 'kitchen', 'bath', 'whole-home'];
const nameOf = (room: Room): string => `walk:${room.id}`;

const isOpen = (d: Desk, room: Room): boolean => d.open.has(nameOf(room));

function openOnly(d: Desk, room: Room | undefined): void {
  for (const r of roomsOf(d.case)) d.open.delete(nameOf(r));
  if (room) d.open.add(nameOf(room));
  d.draw();
  if (room)
    void Promise.resolve().then(() => document.getElementById(`walk-${room.id}`)?.scrollIntoView({ block: 'start' }));
}

function addRoom(d: Desk, kinds: string[]): void {
  const before = roomsOf(d.case).length;
  const label = (kind: string) => spoken(kindOfRoom(kind)!.label);
  d.put(kinds.reduce((c, kind) => withRoom(c, kind, label(kind)), d.case));
  openOnly(d, roomsOf(d.case)[before]);
}

/** Both columns show where a person asked for them, or a move-in record is there already. */
const wantsBoth = (d: Desk): boolean => d.folds.has('walk:both') || thingsOf(d.case).some((t) => t.conditionAtMoveIn);

function homeFacts(d: Desk): TemplateResult {
  const built = walkOf(d.case).builtBefore1978;
  const set = (id: string) => d.put(withWalk(d.case, { builtBefore1978: triValue(id) }));
  const options = [
    { id: 'yes', label: say('page.yes') },
    { id: 'no', label: say('page.no') },
    { id: '', label: say('page.notKnown') },
  ];
  const began = fieldsAt(d, ['/tenancy/began'])[0];
  return html`<div class="fields walk-home">
    ${began ? field(d, { ...began, key: 'walk', label: say('page.walk.began'), help: undefined }) : nothing}
    <fieldset class="field">
      <legend>${say('page.walk.built')}</legend>
      <p class="help">${say('page.walk.built.help')}</p>
      ${oneOf('walk-built', options, triWord(built), set)}
    </fieldset>
  </div>
  <label class="check walk-both"><input type="checkbox" .checked=${wantsBoth(d)} ?disabled=${thingsOf(d.case).some((t) => t.conditionAtMoveIn)} @change=${() => d.toggleFold('walk:both')} /><span>${say('page.walk.bothColumns')}</span></label>`;
}

/** A place where one of several things is: which one is asked by what they are called. */
function choice(d: Desk, room: Room, elements: string[]): TemplateResult {
  return html`<li class="walk-thing walk-choice">
    <p id="walk-choice-${room.id}-${elements[0]}">${say('page.walk.choose')}</p>
    <div class="walk-buttons" role="group" aria-labelledby="walk-choice-${room.id}-${elements[0]}">
      ${elements.map((e) => html`<button type="button" class="tool" @click=${() => d.put(withThing(d.case, room.id, e, {}))}>${elementName(d, e)}</button>`)}
    </div>
  </li>`;
}

function addThing(d: Desk, room: Room): TemplateResult {
  const there = rowsOf(d.case, room);
  const others = allThings.filter((e) => !there.includes(e));
  return html`<div class="field walk-add">
    <label for="walk-add-${room.id}">${say('page.walk.thing.add')}</label>
    <select
      id="walk-add-${room.id}"
      class="entry"
      @change=${(e: Event) => {
        const box = e.target as HTMLSelectElement;
        if (box.value) d.put(withThing(d.case, room.id, box.value, {}));
        box.value = '';
      }}
    >
      <option value="">${say('page.walk.thing.choose')}</option>
      ${others.map((e) => html`<option value=${e}>${elementName(d, e)}</option>`)}
    </select>
  </div>`;
}

function body(d: Desk, room: Room): TemplateResult {
  const rooms = roomsOf(d.case);
  const next = rooms[rooms.indexOf(room) + 1];
  const { seen, all } = countIn(d.case, room);
  const both = wantsBoth(d);
  return html`<ul class="walk-things">
      ${repeat(
        rowsOf(d.case, room),
        (row) => String(row),
        (row) => (typeof row === 'string' ? thing(d, room, row, both) : choice(d, room, row)),
      )}
    </ul>
    <div class="walk-room-end">
      ${seen < all ? html`<button type="button" class="tool tool-main" @click=${() => d.put(withRestFine(d.case, room, d.today))}>${say('page.walk.room.restFine')}</button>` : nothing}
      ${
        next
          ? html`<button type="button" class=${seen < all ? 'tool' : 'tool tool-main'} @click=${() => openOnly(d, next)}>${say('page.walk.room.next', { name: roomName(next) })}</button>`
          : html`<a class=${seen < all ? 'tool' : 'tool tool-main'} href="#walk-list">${say('page.walk.room.toList')}</a>`
      }
    </div>
    <details class="fold">
      <summary>${say('page.walk.more')}<span class="unseen"> ${roomName(room)}</span></summary>
      <div class="fields">
        ${addThing(d, room)}
        <div class="field">
          <label for="walk-name-${room.id}">${say('page.walk.room.name')}</label>
          <input id="walk-name-${room.id}" class="entry" type="text" .value=${roomName(room)} @change=${(e: Event) => d.put(withRoomNamed(d.case, room.id, (e.target as HTMLInputElement).value.trim() || undefined))} />
        </div>
      </div>
      <p><button type="button" class="tool" @click=${() => removeRoom(d, room)}>${say('page.walk.room.remove')}<span class="unseen"> ${roomName(room)}</span></button></p>
    </details>`;
}

function removeRoom(d: Desk, room: Room): void {
  d.put(withoutRoom(d.case, room.id));
  d.tell(say('page.notice.removed', { what: roomName(room) }), true);
}

function room(d: Desk, r: Room): TemplateResult {
  const { seen, all } = countIn(d.case, r);
  const open = isOpen(d, r);
  return html`<li class="walk-room" id="walk-${r.id}">
    <h3><button type="button" class="walk-room-name" aria-expanded=${open ? 'true' : 'false'} aria-controls="walk-${r.id}-body" @click=${() => openOnly(d, open ? undefined : r)}>
      <span>${roomName(r)}</span> <span class="fold-count">${seen === all ? say('page.walk.room.done') : say('page.walk.count', { seen, all })}</span>
    </button></h3>
    <div id="walk-${r.id}-body" ?hidden=${!open}>${open ? body(d, r) : nothing}</div>
  </li>`;
}

/** Rooms to add; a usual home is one tap. */
function adding(d: Desk): TemplateResult {
  const none = roomsOf(d.case).length === 0;
  return html`<div class="walk-adding">
    <h3>${say(none ? 'page.walk.rooms.which' : 'page.walk.rooms.add')}</h3>
    <div class="walk-buttons">
      ${none ? html`<button type="button" class="tool tool-main" @click=${() => addRoom(d, usual)}>${say('page.walk.rooms.usual')}</button>` : nothing}
      ${roomKinds.map((k) => html`<button type="button" class="tool" @click=${() => addRoom(d, [k.id])}>${spoken(k.label)}</button>`)}
    </div>
  </div>`;
}

export function rooms(d: Desk): TemplateResult {
  const all = roomsOf(d.case);
  const { seen, all: things } = countAll(d.case);
  const side = d.side === 'landlord' ? 'landlord' : 'tenant';
  return html`<section class="walk" aria-labelledby="walk-rooms">
    <h2 id="walk-rooms" tabindex="-1">${say(`page.walk.title.${side}`)}</h2>
    <p>${say(`page.walk.says.${side}`)}</p>
    ${homeFacts(d)}
    ${all.length ? html`<p class="walk-progress" role="status">${say('page.walk.count', { seen, all: things })}</p>` : nothing}
    <ol class="walk-rooms">${repeat(
      all,
      (r) => r.id,
      (r) => room(d, r),
    )}</ol>
    ${adding(d)}
  </section>`;
}
