// The days that count in law: what had to happen by when, whether it did, and how the day was counted.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { pictures } from '../../app/pictures';
import { daysBetween, fullDay, longDay } from '../../say/show';
import { say } from '../../say/wording';
import type { DutyState, LegalDate } from '../../case/assessment';
import { spanInWords } from '../../say/date-words';
import { stateMark } from '../../parts/mark';
import { sources } from '../../parts/sources';
import './days.css';

/** How far an open day is from today, in words. */
function nearness(d: Desk, date: LegalDate): string {
  if (date.state !== 'open' || !date.last?.earliest) return '';
  const left = daysBetween(d.today, date.last.earliest);
  return left < 0
    ? ''
    : left === 0
      ? say('page.days.today')
      : left === 1
        ? say('page.days.tomorrow')
        : say('page.days.left', { days: left });
}

/** A duty that costs the tenant a right and is not done: shown first and loud. */
const isLoud = (date: LegalDate): boolean => date.loud && (date.state === 'open' || date.state === 'missed');

function when(date: LegalDate): TemplateResult | typeof nothing {
  if (date.notBefore && date.first) {
    const first = date.first.earliest === date.first.latest ? fullDay(date.first.earliest!) : spanInWords(date.first, longDay);
    return html`<p class="day-last">${say('page.days.notBefore', { day: first })}</p>`;
  }
  if (!date.last || (date.last.earliest === null && date.last.latest === null)) return nothing;
  const words =
    date.last.earliest === date.last.latest ? fullDay(date.last.earliest!) : spanInWords(date.last, longDay);
  return html`<p class="day-last">${words}</p>`;
}

function how(d: Desk, date: LegalDate, saysIfMissed: boolean): TemplateResult {
  return html`<details class="how">
    <summary>${say('page.days.how')}<span class="unseen"> ${date.label}</span></summary>
    <p>${date.rule}</p>
    ${date.text ? html`<p>${date.text}</p>` : nothing}
    ${date.condition ? html`<p>${say('page.days.condition', { condition: date.condition })}</p>` : nothing}
    ${!saysIfMissed && date.ifMissed ? html`<p>${say('page.days.ifMissed')} ${date.ifMissed}</p>` : nothing}
    ${date.check ? html`<p class="check">${say('page.check')} ${date.check}</p>` : nothing} ${sources(d, date)}
  </details>`;
}

function day(d: Desk, date: LegalDate): TemplateResult {
  const near = nearness(d, date);
  const saysIfMissed = date.state === 'missed' || isLoud(date);
  return html`<li class="day" data-state=${date.state} data-loud=${isLoud(date) ? 'yes' : nothing}>
    ${stateMark(date.state)}
    <div>
      <p class="day-name"><strong>${date.label}</strong> <span class="day-who">${say(`page.days.who.${date.who}`)}</span></p>
      ${when(date)}
      <p class="day-state"><strong>${date.stateText}</strong>${near ? html` <span class="day-near">${near}</span>` : nothing}</p>
      ${saysIfMissed && date.ifMissed ? html`<p class="day-if">${date.ifMissed}</p>` : nothing} ${how(d, date, saysIfMissed)}
    </div>
  </li>`;
}

const list = (d: Desk, dates: LegalDate[]): TemplateResult | typeof nothing =>
  dates.length
    ? html`<ul class="days-list">
        ${dates.map((x) => day(d, x))}
      </ul>`
    : nothing;

const fold = (d: Desk, name: string, dates: LegalDate[]): TemplateResult | typeof nothing =>
  dates.length
    ? html`<details class="fold">
        <summary>${say(`page.days.${name}`, { count: dates.length })}</summary>
        ${list(d, dates)}
      </details>`
    : nothing;

/** Loud ones first, then the picture, then what is missed, coming or not known; what was done in time can wait in a fold. */
export function days(d: Desk): TemplateResult {
  const all = d.result?.dates ?? [];
  const inState = (...states: DutyState[]) => all.filter((x) => !isLoud(x) && states.includes(x.state));
  return html`<section class="days" id="days" aria-labelledby="days-title">
    <h2 id="days-title">${say('page.days.title')}</h2>
    ${
      all.length === 0
        ? html`<p class="empty">${say(d.case.jurisdiction ? 'page.days.none' : 'page.days.noPlace')}</p>`
        : html`${list(d, all.filter(isLoud))} ${pictures.get(d)?.timeline(d) ?? nothing} ${list(d, inState('missed', 'open', 'cannot-tell'))}
        ${fold(d, 'met', inState('met'))} ${fold(d, 'idle', inState('not-needed'))}`
    }
  </section>`;
}
