// The list: for each thing one of three answers, the reason, and what could fairly be charged if it is left; then what to photograph.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { live } from 'lit/directives/live.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Desk } from '../../app/desk';
import { leftOn } from '../../case/next-step';
import type { WalkItem } from '../../case/walk';
import { type Answer, type Kind, ofKind, type Shares } from '../../case/walk-answers';
import { thingsOf, walkOf, withThingById } from '../../case/walk-edits';
import { sourcesOf } from '../../case/walk-home';
import { longDay, money, shortMoney } from '../../say/show';
import { spoken } from '../../say/spoken';
import { canSay, say } from '../../say/wording';
import { saveList, shareList } from './hand-out';
import { answers, leftJudged } from './judged';
import { faultName, photosOf, thingName } from './names';
import { quote } from './thing';

const percent = (n: number): string => say('page.walk.money.percent', { n });

type SideWords = 'tenant' | 'landlord';

function shareWords({ low, likely, high }: Shares, side: SideWords): string {
  if (high === 0) return say('page.walk.money.nothing');
  const range =
    low === high
      ? say(`page.walk.money.share.one.${side}`, { share: percent(low) })
      : say(`page.walk.money.share.${side}`, { low: percent(low), high: percent(high) });
  const often = likely !== null && low !== high ? ` ${say('page.walk.money.likely', { sum: percent(likely) })}` : '';
  return range + often;
}

/** What could fairly be charged if it is left: a sum where somebody named a price, else the share. */
export function moneyWords(d: Desk, a: Answer): string {
  if (!a.judged || !a.share) return '';
  const side = d.side === 'landlord' ? 'landlord' : 'tenant';
  if (!a.priced) return shareWords(a.share, side);
  const { low, likely, high } = a.judged.fair;
  const price = money(a.judged.claimed);
  if (low === high) return say(`page.walk.money.sum.one.${side}`, { sum: money(low), price });
  const often = likely === null ? '' : ` ${say('page.walk.money.likely', { sum: shortMoney(likely) })}`;
  return say(`page.walk.money.sum.${side}`, { low: money(low), high: money(high), price }) + often;
}

const isOldPaint = (d: Desk, a: Answer): boolean =>
  a.stops.length > 0 && a.stops.every((h) => h.builtBefore) && walkOf(d.case).builtBefore1978 === undefined;

/** Why this is the answer, in the engine's words or the rules'. */
export function reasonWords(d: Desk, a: Answer): string[] {
  const { judged } = a;
  switch (a.kind) {
    case 'leave':
      return [judged?.reason ?? '', judged?.turningPoint?.text ?? ''].filter(Boolean);
    case 'stop':
      return [
        ...a.stops.map((h) => spoken(h.text)),
        isOldPaint(d, a) ? say('page.walk.answer.old') : '',
        a.stops.length ? '' : spoken(a.advice.text),
      ].filter(Boolean);
    case 'self':
    case 'ask':
      return [
        spoken(a.advice.text),
        a.kind === 'self' && d.side !== 'landlord' ? say('page.walk.answer.lease') : '',
      ].filter(Boolean);
    default:
      return [];
  }
}

export const answerWords = (a: Answer): string =>
  a.kind === 'done'
    ? say('page.walk.answer.done', { day: longDay(a.thing.remedied!) })
    : say(`page.walk.answer.${a.kind}`);

function sourceWords(a: Answer): string {
  const how = (read: string): string => (canSay(`page.walk.read.${read}`) ? say(`page.walk.read.${read}`) : '');
  const titles = a.stops.flatMap(sourcesOf).map((s) => [s.title, s.publisher, how(s.read)].filter(Boolean).join('; '));
  return [...new Set(titles)].join('. ');
}

function mark(d: Desk, t: WalkItem): TemplateResult {
  const set = (done: boolean) => d.put(withThingById(d.case, t.id, { remedied: done ? d.today : undefined }));
  return html`<label class="check walk-done"><input type="checkbox" .checked=${live(t.remedied !== undefined)} @change=${(e: Event) => set((e.target as HTMLInputElement).checked)} /><span>${say('page.walk.done')}<span class="unseen"> ${thingName(d, t)}</span></span></label>`;
}

function item(d: Desk, a: Answer): TemplateResult {
  const t = a.thing;
  const landlord = d.side === 'landlord';
  const others = a.kind === 'stop' ? [] : a.hazards;
  return html`<li class="walk-item" data-kind=${a.kind}>
    <h4>${thingName(d, t)} <span class="walk-fault-name">${faultName(d, t)}</span></h4>
    ${landlord && a.kind !== 'say' && a.kind !== 'done' ? nothing : html`<p class="walk-answer">${answerWords(a)}</p>`}
    ${landlord && (a.kind === 'self' || a.kind === 'ask') ? (a.judged ? html`<p>${a.judged.reason}</p>` : nothing) : reasonWords(d, a).map((r) => html`<p>${r}</p>`)}
    ${a.kind === 'done' || a.kind === 'leave' ? nothing : html`<p class="walk-money">${moneyWords(d, a)}</p>`}
    ${a.judged?.turningPoint && a.kind !== 'leave' && a.kind !== 'done' ? html`<p class="walk-turning">${a.judged.turningPoint.text}</p>` : nothing}
    ${(a.kind === 'self' || a.kind === 'ask') && !landlord ? html`<p class="walk-minutes">${say('page.walk.minutes', { minutes: a.advice.minutes })}</p>` : nothing}
    ${others.map((h) => html`<p class="walk-hazard">${spoken(h.text)}</p>`)}
    ${a.kind === 'stop' && a.stops.length ? html`<p class="sources">${say('page.walk.source', { source: sourceWords(a) })}</p>` : nothing}
    ${a.kind === 'leave' ? nothing : html`<div class="walk-item-do">${landlord ? nothing : mark(d, t)} ${a.kind === 'done' ? nothing : html`<details class="walk-quote" ?open=${t.quote !== undefined}><summary>${say('page.walk.quote')}<span class="unseen"> ${thingName(d, t)}</span></summary>${quote(d, t)}</details>`}</div>`}
  </li>`;
}

function group(d: Desk, name: string, all: Answer[], ...kinds: Kind[]): TemplateResult | typeof nothing {
  const these = ofKind(all, ...kinds);
  return these.length
    ? html`<h3>${say(`page.walk.list.group.${name}`)} <span class="fold-count">(${these.length})</span></h3>
        <ol class="walk-items" data-group=${name}>${repeat(
          these,
          (a) => a.thing.id,
          (a) => item(d, a),
        )}</ol>`
    : nothing;
}

/** What was seen that is not fine; each wants a photo near by. */
function toPhotograph(d: Desk): TemplateResult | typeof nothing {
  const things = thingsOf(d.case).filter(
    (t) => (t.conditionAtMoveOut && t.conditionAtMoveOut !== 'fine') || t.remedied,
  );
  if (things.length === 0) return nothing;
  return html`<h3>${say('page.walk.photoList.title')}</h3>
    <p>${say('page.walk.photoList.says')}</p>
    <ul class="walk-photo-list">
      ${things.map((t) => {
        const count = photosOf(d, t).length;
        return html`<li>${thingName(d, t)}: ${faultName(d, t)}${count ? html` <span class="fold-count">(${say('page.walk.photoList.have', { count })})</span>` : nothing}</li>`;
      })}
    </ul>`;
}

export function list(d: Desk): TemplateResult {
  const landlord = d.side === 'landlord';
  const all = answers(d);
  const day = leftOn(d.case);
  return html`<section class="walk walk-list" aria-labelledby="walk-list">
    <h2 id="walk-list" tabindex="-1">${say(`page.walk.list.title.${landlord ? 'landlord' : 'tenant'}`)}</h2>
    ${
      all.length === 0
        ? html`<p class="empty">${say('page.walk.list.none')}</p>`
        : html`<p>${day ? say('page.walk.list.basis', { day: longDay(day) }) : say('page.walk.list.basis.noDay')} ${landlord ? nothing : say('page.walk.list.order')}</p>
          ${leftJudged(d) === null ? html`<p class="empty">${say('page.sums.loading')}</p>` : nothing}
          ${group(d, 'say', all, 'say')}
          ${
            landlord
              ? html`${group(d, 'charge', all, 'self', 'ask', 'stop')} ${group(d, 'upkeep', all, 'leave')}`
              : html`${group(d, 'fix', all, 'self', 'ask')} ${group(d, 'stop', all, 'stop')} ${group(d, 'leave', all, 'leave')}`
          }
          ${group(d, 'done', all, 'done')} ${toPhotograph(d)}`
    }
    ${
      thingsOf(d.case).length
        ? html`<p class="walk-buttons walk-tools">
            <button type="button" class="tool" @click=${() => d.printOnly('walk')}>${say('page.walk.print')}</button>
            <button type="button" class="tool" @click=${() => void saveList(d)}>${say('page.walk.save')}</button>
            ${typeof navigator.share === 'function' ? html`<button type="button" class="tool" @click=${() => void shareList(d)}>${say('page.walk.share')}</button>` : nothing}
          </p>`
        : nothing
    }
  </section>`;
}
