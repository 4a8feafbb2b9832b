// The charges as a ledger: what the statement says in ink, what Wearline notes beside it in pencil.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { repeat } from 'lit/directives/repeat.js';
import { bringIn } from '../bring-in/door';
import type { Desk } from '../../app/desk';
import { cents } from '../../say/show';
import { say } from '../../say/wording';
import { charge } from './charge';
import './charges.css';

export function charges(d: Desk): TemplateResult {
  const judged = new Map(d.result?.lines.map((l) => [l.id, l]));
  const longest = Math.max(0, ...(d.result?.lines.map((l) => cents(l.claimed)) ?? []));
  // One empty row is always there to type in. It carries the id its charge will get, so typing turns it into the charge in place.
  const rows = [...d.case.lines, { id: d.freshLineId() }];
  return html`<section class="charges" aria-labelledby="charges-title">
    <h2 id="charges-title">${say('page.charges.title')}</h2>
    <p class="charges-says">${say(d.case.lines.length ? 'page.charges.says' : 'page.charges.first')}</p>
    ${d.blank ? nothing : html`<p class="charges-bring"><button type="button" class="link" @click=${() => bringIn(d)}>${say('page.charges.bring')}</button></p>`}
    <div class="charges-heads" aria-hidden="true">
      <span>${say('page.charges.head.what')}</span>
      <span>${say('page.charges.head.charged')}</span>
      <span>${say('page.charges.head.fair')}</span>
    </div>
    <ol class="ledger">
      ${repeat(
        rows,
        (l) => l.id,
        (l, i) => charge(d, l, i, judged.get(l.id), longest),
      )}
    </ol>
  </section>`;
}
