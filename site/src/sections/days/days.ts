// The days that count in law: what had to happen by when, whether it did, and how the day was counted.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import type { Desk } from '../../app/desk';
import { pictures } from '../../app/pictures';
import { daysBetween, fullDay, longDay } from '../../app/show';
import { say } from '../../app/wording';
import type { LegalDate } from '../../case/assessment';
import { spanInWords } from '../../case/date-words';
import { stateMark } from '../../parts/mark';
import { sources } from '../../parts/sources';
import './days.css';

/** How far an open day is from today, in words. */
function nearness(d: Desk, date: LegalDate): string {
  if (date.state !== 'open' || !date.last) return '';
  const left = daysBetween(d.today, date.last.earliest);
  return left < 0
    ? ''
    : left === 0
      ? say('page.days.today')
      : left === 1
        ? say('page.days.tomorrow')
        : say('page.days.left', { days: left });
}

function day(d: Desk, date: LegalDate): TemplateResult {
  const near = nearness(d, date);
  const exact = date.last && date.last.earliest === date.last.latest;
  return html`<li class="day" data-state=${date.state} data-loud=${date.loud ? 'yes' : nothing}>
    ${stateMark(date.state)}
    <div>
      <p class="day-name"><strong>${date.label}</strong> <span class="day-who">${say(`page.days.who.${date.who}`)}</span></p>
      ${
        date.last
          ? html`<p class="day-last">${exact ? fullDay(date.last.earliest) : spanInWords(date.last, longDay)}</p>`
          : nothing
      }
      <p class="day-state"><strong>${date.stateText}</strong>${near ? html` <span class="day-near">${near}</span>` : nothing}</p>
      ${date.state === 'missed' || date.loud ? html`<p class="day-if">${date.ifMissed}</p>` : nothing}
      <details class="how">
        <summary>${say('page.days.how')}<span class="unseen"> ${date.label}</span></summary>
        <p>${date.text}</p>
        ${date.state !== 'missed' && !date.loud && date.ifMissed ? html`<p>${say('page.days.ifMissed')} ${date.ifMissed}</p>` : nothing}
        ${date.check ? html`<p class="check">${say('page.check')} ${date.check}</p>` : nothing} ${sources(d, date)}
      </details>
    </div>
  </li>`;
}

export function days(d: Desk): TemplateResult | typeof nothing {
  const all = d.result?.dates ?? [];
  const needed = all.filter((x) => x.state !== 'not-needed');
  const idle = all.filter((x) => x.state === 'not-needed');
  const loud = needed.filter((x) => x.loud);
  const calm = needed.filter((x) => !x.loud);
  return html`<section class="days" id="days" aria-labelledby="days-title">
    <h2 id="days-title">${say('page.days.title')}</h2>
    ${
      all.length === 0
        ? html`<p class="empty">${say(d.case.jurisdiction ? 'page.days.none' : 'page.days.noPlace')}</p>`
        : html`${loud.length ? html`<ul class="days-list">${loud.map((x) => day(d, x))}</ul>` : nothing}
          ${pictures.get(d)?.timeline(d) ?? nothing}
          <ul class="days-list">
            ${calm.map((x) => day(d, x))}
          </ul>
          ${
            idle.length
              ? html`<details class="fold"><summary>${say('page.days.idle', { count: idle.length })}</summary>
                <ul class="days-list">${idle.map((x) => day(d, x))}</ul></details>`
              : nothing
          }`
    }
  </section>`;
}
