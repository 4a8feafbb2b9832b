// The page: its sections in the order this side needs them.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { bringing } from './sections/bring-in/door';
import type { Desk } from './app/desk';
import type { Keeper } from './app/keeper';
import { later } from './app/later';
import { say } from './say/wording';
import { cautions } from './sections/cautions/cautions';
import { charges } from './sections/charges/charges';
import { days } from './sections/days/days';
import { footer } from './sections/footer/footer';
import { law } from './sections/law/law';
import { masthead } from './sections/masthead/masthead';
import { opening } from './sections/opening/opening';
import { ordinary } from './sections/ordinary/ordinary';
import { papers } from './sections/papers/papers';
import { standing } from './sections/standing/standing';
import { strip } from './sections/strip/strip';
import { sums } from './sections/sums/sums';
import { tenancy } from './sections/tenancy/tenancy';
import { unknowns } from './sections/unknowns/unknowns';

const letter = later(() => import('./sections/letter/letter'));
const roster = later(() => import('./sections/roster/roster'));
const evidence = later(() => import('./sections/evidence/evidence'));
const takeaway = later(() => import('./sections/takeaway/takeaway'));

/** A landlord needs the days and the papers before the sums; a tenant or adviser the sums first. */
const results = (d: Desk): TemplateResult =>
  d.side === 'landlord'
    ? html`${days(d)}${papers(d)}${sums(d)}${ordinary(d)}${unknowns(d)}${cautions(d)}${law(d)}`
    : html`${sums(d)}${days(d)}${unknowns(d)}${ordinary(d)}${papers(d)}${cautions(d)}${law(d)}`;

function notice(d: Desk): TemplateResult {
  return html`<div class="notice" role="status" aria-live="polite">
    ${
      d.notice
        ? html`<span>${d.notice.text}</span>
          ${d.notice.acts.map((a) => html`<button type="button" class="link" @click=${() => a.act()}>${say(a.says)}</button>`)}
          <button type="button" class="link" @click=${() => d.hush()}>${say('page.notice.close')}</button>`
        : nothing
    }
  </div>`;
}

const caseOf = (d: Desk): TemplateResult => html`
  ${d.sheets.length > 1 ? roster.get(d)?.roster(d) : nothing} ${opening(d)} ${standing(d)}
  <div class="desk">
    ${charges(d)}
    <div class="results">${results(d)}</div>
    ${tenancy(d)} ${d.blank ? nothing : html`${evidence.get(d)?.evidence(d)}${letter.get(d)?.letter(d)}${takeaway.get(d)?.takeaway(d)}`}
  </div>
`;

export const page = (d: Desk, keeper: Keeper): TemplateResult => html`
  <a class="skip" href=${d.bringing ? '#bring-title' : '#charges-title'}>${say('page.skip')}</a>
  ${masthead(d, keeper)}
  <main>
    ${d.bringing ? bringing(d) : caseOf(d)}
  </main>
  ${footer(d)} ${d.bringing ? nothing : strip(d)} ${notice(d)}
`;
