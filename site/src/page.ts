// The page: its sections in the order a person needs them.

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
import { examplesList, opening } from './sections/opening/opening';
import { outlook } from './sections/outlook/outlook';
import { papers } from './sections/papers/papers';
import { standing } from './sections/standing/standing';
import { isWalking } from './case/walk';
import { walkPart } from './sections/walk/door';
import { strip } from './sections/strip/strip';
import { tenancy } from './sections/tenancy/tenancy';
import { unknowns } from './sections/unknowns/unknowns';

const letter = later(() => import('./sections/letter/letter'));
const roster = later(() => import('./sections/roster/roster'));
const evidence = later(() => import('./sections/evidence/evidence'));
const takeaway = later(() => import('./sections/takeaway/takeaway'));
const client = later(() => import('./sections/client/client'));
const summary = later(() => import('./sections/summary/summary'));

/** How long a message stays, in milliseconds; one that offers something to press stays longer. */
const stays = { plain: 8_000, acts: 20_000 };
let leaving: { of: unknown; timer: ReturnType<typeof setTimeout> } | undefined;

/** A message goes by itself, unless somebody is at it, or it is about work that could be lost. */
function letGo(d: Desk): void {
  if (leaving?.of === d.notice) return;
  clearTimeout(leaving?.timer);
  const of = d.notice;
  if (!of || of.stays) return void (leaving = undefined);
  const go = () => {
    if (d.notice !== of) return;
    if (document.querySelector('.notice:hover, .notice:focus-within'))
      leaving = { of, timer: setTimeout(go, stays.plain) };
    else d.hush();
  };
  leaving = { of, timer: setTimeout(go, of.acts.length ? stays.acts : stays.plain) };
}

function notice(d: Desk): TemplateResult {
  letGo(d);
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

/** Whose case this is: on the screen where several lie open, and always on paper. */
const caseName = (d: Desk): string => d.case.title || d.sheet.file || say('page.roster.unnamed');

/** The facts that decide, where you stand, the charges, what is worth asking, the days, the letter; then what can wait, folded. */
const caseOf = (d: Desk): TemplateResult => html`
  <p class="case-name">${caseName(d)}</p>
  ${d.sheets.length > 1 ? roster.get(d)?.roster(d) : nothing} ${opening(d)}
  <div class="desk">
    <div class="desk-top">${d.side === 'adviser' ? client.get(d)?.client(d) : nothing} ${standing(d)}</div>
    ${outlook(d)} ${charges(d)} ${unknowns(d)} ${days(d)}
    ${
      d.blank
        ? examplesList(d)
        : html`${letter.get(d)?.letter(d)} ${cautions(d)}
          <div class="folded-parts">
            ${d.side === 'adviser' ? summary.get(d)?.summary(d) : nothing} ${papers(d)} ${evidence.get(d)?.evidence(d)} ${law(d)} ${tenancy(d)} ${takeaway.get(d)?.takeaway(d)}
          </div>`
    }
  </div>
`;

/** Before anybody left: the walk through the home in place of the charges. */
const walkOf = (d: Desk): TemplateResult => html`
  <p class="case-name">${caseName(d)}</p>
  ${d.sheets.length > 1 ? roster.get(d)?.roster(d) : nothing}
  <div class="desk">
    <div class="desk-top">${d.side === 'adviser' ? client.get(d)?.client(d) : nothing} ${standing(d)}</div>
    ${walkPart.get(d)?.walk(d) ?? html`<p class="empty">${say('page.sums.loading')}</p>`}
    ${days(d)} ${letter.get(d)?.letter(d)} ${cautions(d)}
    <div class="folded-parts">${evidence.get(d)?.evidence(d)} ${law(d)} ${tenancy(d)}</div>
  </div>
`;

export const page = (d: Desk, keeper: Keeper): TemplateResult => html`
  <a class="skip" href=${d.bringing ? '#bring-title' : isWalking(d.case) ? '#walk-rooms' : '#charges-title'}>${say('page.skip')}</a>
  ${masthead(d, keeper)}
  <main>
    ${d.bringing ? bringing(d) : isWalking(d.case) ? walkOf(d) : caseOf(d)}
  </main>
  ${footer(d)} ${d.bringing ? nothing : isWalking(d.case) ? walkPart.get(d)?.walkNav(d) : strip(d)} ${notice(d)}
`;
