// Before moving out: the home room by room, what to do about what was seen, the inspection, the leaving day, and the way on to the
// statement when it comes.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { bringIn } from '../bring-in/door';
import type { Desk } from '../../app/desk';
import { endWalk } from '../../case/walk';
import { countAll } from '../../case/walk-edits';
import { notFine } from '../../case/walk-answers';
import { say } from '../../say/wording';
import { inspection } from './inspection';
import { leaving } from './leaving';
import { list } from './list';
import { rooms } from './rooms';
import './walk.css';

export { wordsThere } from './words';

/** The same case, now about the statement. */
function statementCame(d: Desk, bring: boolean): void {
  d.put(endWalk(d.case, d.today));
  if (bring) bringIn(d);
  window.scrollTo(0, 0);
}

function onward(d: Desk): TemplateResult {
  const side = d.side === 'landlord' ? 'landlord' : 'tenant';
  return html`<section class="walk" aria-labelledby="walk-came">
    <h2 id="walk-came">${say(`page.walk.came.title.${side}`)}</h2>
    <p>${say(`page.walk.came.says.${side}`)}</p>
    <p class="walk-buttons">
      <button type="button" class="tool" @click=${() => statementCame(d, side === 'tenant')}>${say(`page.walk.came.button.${side}`)}</button>
      ${side === 'landlord' ? nothing : html`<button type="button" class="tool" @click=${() => statementCame(d, false)}>${say('page.walk.came.left')}</button>`}
    </p>
  </section>`;
}

/** On a narrow screen the parts are one tap away. */
function nav(d: Desk): TemplateResult {
  const { seen, all } = countAll(d.case);
  const parts = [
    ['rooms', all ? `${seen}/${all}` : ''],
    ['list', String(notFine(d.case).length || '')],
    ['inspection', ''],
    ...(d.side === 'landlord' ? [] : [['leaving', '']]),
  ] as [string, string][];
  return html`<nav class="strip" aria-label=${say('page.walk.nav.label')}>
    <div class="strip-top">
      ${d.canUndo ? html`<span class="strip-line"></span><button type="button" class="strip-undo walk-undo" @click=${() => d.undo()}>${say('page.tool.undo')}</button>` : nothing}
    </div>
    <ul class="places">
      ${parts.map(([name, count]) => html`<li><a href="#walk-${name}">${say(`page.walk.nav.${name}`)}${count ? html` <span class="places-count">${count}</span>` : nothing}</a></li>`)}
    </ul>
  </nav>`;
}

export const walk = (d: Desk): TemplateResult =>
  html`${rooms(d)} ${list(d)} ${inspection(d)} ${leaving(d)} ${onward(d)}`;
export const walkNav = nav;
