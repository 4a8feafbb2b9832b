// The walk-through as one file to print, hand over or keep: what was seen room by room, what to do about it, what to photograph. Nothing
// in it runs, and nothing private is in it: no notes about a client, no case.

import { html, nothing, render, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import type { Room } from '../../case/walk';
import { type Answer, type Kind, ofKind } from '../../case/walk-answers';
import { roomsOf, thingsOf, walkOf } from '../../case/walk-edits';
import { longDay } from '../../say/show';
import { spoken } from '../../say/spoken';
import { language, say } from '../../say/wording';
import { nameOfPlace } from '../../engine/rules';
import css from '../../out/report.css?inline';
import { answers } from './judged';
import { answerWords, moneyWords, reasonWords } from './list';
import { elementName, faultName, findingName, momentOf, photosOf, roomName, sayState, thingName } from './names';

const landlord = (d: Desk): boolean => d.side === 'landlord';

function roomTable(d: Desk, room: Room): TemplateResult | typeof nothing {
  const things = thingsOf(d.case).filter((t) => t.room === room.id && (t.conditionAtMoveOut || t.conditionAtMoveIn));
  const both = things.some((t) => t.conditionAtMoveIn);
  if (things.length === 0) return nothing;
  return html`<h3><span>${roomName(room)}</span></h3>
    <table>
      <thead><tr><th>${say('page.walk.file.thing')}</th>${both ? html`<th>${say('page.walk.in')}</th>` : nothing}<th>${say('page.walk.out')}</th><th>${say('page.walk.note')}</th><th>${say('page.walk.file.photos')}</th></tr></thead>
      <tbody>
        ${things.map(
          (t) => html`<tr>
            <th scope="row">${elementName(d, t.element)}</th>
            ${both ? html`<td>${sayState(t.conditionAtMoveIn)}</td>` : nothing}
            <td>${[sayState(t.conditionAtMoveOut), findingName(d, t.element, t.finding)].filter(Boolean).join(': ')}</td>
            <td>${[t.remedied ? say('page.walk.answer.done', { day: longDay(t.remedied) }) : '', t.note ?? ''].filter(Boolean).join(' ')}</td>
            <td>${photosOf(d, t).map(momentOf).join('; ')}</td>
          </tr>`,
        )}
      </tbody>
    </table>`;
}

function item(d: Desk, a: Answer): TemplateResult {
  const mine = !landlord(d);
  const others = a.kind === 'stop' ? [] : a.hazards;
  return html`<li>
    ${mine && a.kind !== 'leave' ? html`<input type="checkbox" ?checked=${a.kind === 'done'} /> ` : nothing}<strong>${thingName(d, a.thing)}: ${faultName(d, a.thing)}.</strong>
    ${mine ? answerWords(a) : ''} ${mine || a.kind === 'stop' || a.kind === 'leave' ? reasonWords(d, a).join(' ') : (a.judged?.reason ?? '')}
    ${a.kind === 'done' || a.kind === 'leave' ? nothing : html`<br />${moneyWords(d, a)}`}
    ${others.map((h) => html`<br /><em>${spoken(h.text)}</em>`)}
  </li>`;
}

function group(d: Desk, name: string, all: Answer[], ...kinds: Kind[]): TemplateResult | typeof nothing {
  const these = ofKind(all, ...kinds);
  return these.length
    ? html`<h2>${say(`page.walk.list.group.${name}`)}</h2><ol>${these.map((a) => item(d, a))}</ol>`
    : nothing;
}

function page(d: Desk): TemplateResult {
  const all = answers(d);
  const { date } = walkOf(d.case);
  return html`<h1>${say(`page.walk.file.title.${landlord(d) ? 'landlord' : 'tenant'}`)}</h1>
    <p class="quiet">${[d.case.title, nameOfPlace(d.case.jurisdiction)].filter(Boolean).join(', ')}</p>
    <p class="quiet">${say('page.walk.file.made', { day: longDay(date ?? d.today), today: longDay(d.today) })}</p>
    <p class="quiet">${say('page.walk.file.caution')}</p>
    ${group(d, 'say', all, 'say')}
    ${
      landlord(d)
        ? html`${group(d, 'charge', all, 'self', 'ask', 'stop')}${group(d, 'upkeep', all, 'leave')}`
        : html`${group(d, 'fix', all, 'self', 'ask')}${group(d, 'stop', all, 'stop')}${group(d, 'leave', all, 'leave')}`
    }
    ${group(d, 'done', all, 'done')}
    <h2>${say('page.walk.file.rooms')}</h2>
    ${roomsOf(d.case).map((r) => roomTable(d, r))}
    ${landlord(d) ? nothing : html`<h2>${say('page.walk.photoList.title')}</h2><p>${say('page.walk.photoList.says')}</p>`}
    <p>${say('page.walk.file.sign')}</p>`;
}

const escaped = (text: string): string => text.replace(/&/g, '&amp;').replace(/</g, '&lt;');

function asFile(title: string, content: TemplateResult): string {
  const box = document.createElement('div');
  render(content, box);
  const body = box.innerHTML.replace(/<!--.*?-->/gs, '');
  return `<!doctype html>
<html lang="${language()}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'">
<title>${escaped(title)}</title>
<style>${css}</style>
</head>
<body>
${body}
</body>
</html>
`;
}

export async function walkFile(d: Desk): Promise<string> {
  await d.settled();
  return asFile(say(`page.walk.file.title.${landlord(d) ? 'landlord' : 'tenant'}`), page(d));
}

export const receiptFile = (d: Desk): string =>
  asFile(
    say('page.walk.receipt.title'),
    html`<h1>${say('page.walk.receipt.title')}</h1>
      ${['home', 'keys', 'meters', 'got', 'given', 'received'].map((part) => html`<p>${say(`page.walk.receipt.${part}`)}</p>`)}
      <p class="quiet">${d.case.title ?? ''}</p>`,
  );
