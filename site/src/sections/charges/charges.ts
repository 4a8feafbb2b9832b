// The charges as a ledger: what the statement says in ink, what Wearline notes beside it in pencil.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { repeat } from 'lit/directives/repeat.js';
import { bringIn } from '../bring-in/door';
import type { Desk } from '../../app/desk';
import { cents } from '../../case/cents';
import { say } from '../../say/wording';
import { heapsOf, sortLines, type Sorted } from '../../case/outcome';
import { seenPart } from '../walk/door';
import { appliedRules } from '../../parts/applied-rules';
import { atATime, showRow, stretch, stretches } from '../../parts/stretch';
import { charge } from './charge';
import { listName } from './open-charge';
import './charges.css';

/** How the charges divide, in one line. */
function inShort(d: Desk, sorted: Sorted): string {
  const { count } = sorted;
  const all = d.result!.lines.length;
  return say(`page.charges.short.${d.side === 'landlord' ? 'landlord' : 'tenant'}`, {
    all: say(all === 1 ? 'page.charges.count.one' : 'page.charges.count', { count: all }),
    notFair: count['not-fair'],
    fair: count.fair,
    ask: count.ask,
  });
}

/** What is odd about the list itself: sums that do not add up, lines that contradict each other or name no damage. */
function audit(d: Desk): TemplateResult | typeof nothing {
  const found = d.result?.audit ?? [];
  if (found.length === 0) return nothing;
  return html`<details class="fold charges-audit">
    <summary>${say('page.charges.audit', { count: found.length })}</summary>
    <ul class="plain-list">
      ${found.slice(0, atATime).map((a) => html`<li>${a.text}</li>`)}
      ${found.length > atATime ? html`<li>${say('page.sums.leftOutMore', { count: found.length - atATime })}</li>` : nothing}
    </ul>
  </details>`;
}

/** Marks a paper as going along with every charge at once. */
function sameForAll(d: Desk): TemplateResult | typeof nothing {
  if (d.side !== 'landlord' || d.case.lines.length < 2) return nothing;
  const all = (id: string) => {
    const lines = d.case.lines.map((l) => {
      const proof = (l['supportingDocuments'] as string[] | undefined) ?? [];
      return proof.includes(id) ? l : { ...l, supportingDocuments: [...proof, id] };
    });
    d.put({ ...d.case, lines });
  };
  return html`<p class="charges-all">
    ${say('page.charges.all')}
    ${['receipts', 'photos'].map((id) => html`<button type="button" class="link" @click=${() => all(id)}>${say(`page.charges.mark.${id}`)}</button> `)}
  </p>`;
}

/** Puts the cursor in the empty row. */
function addCharge(d: Desk): void {
  if (d.filter) d.showOnly('');
  showRow(d.sheet, listName, d.case.lines.length);
  d.draw();
  void Promise.resolve().then(() => document.getElementById(`text-${d.case.lines.length}`)?.focus());
}

/** What the law says of several charges alike: told once, below them. */
function sharedRules(d: Desk): TemplateResult | typeof nothing {
  const told = appliedRules(d, d.result?.law?.sharedRules ?? []);
  if (told.length === 0) return nothing;
  return html`<details class="fold shared-rules">
    <summary>${say('page.charges.shared')}</summary>
    ${told}
  </details>`;
}

export function charges(d: Desk): TemplateResult {
  const judged = new Map(d.result?.lines.map((l) => [l.id, l]));
  const longest = Math.max(0, ...(d.result?.lines.map((l) => cents(l.claimed)) ?? []));
  const sorted = d.result?.lines.length ? sortLines(d.result) : null;
  const isShown = (id: string): boolean => {
    const outcome = sorted?.outcomes.get(id);
    return !d.filter || outcome === undefined || heapsOf(outcome).includes(d.filter);
  };
  // One empty row is always there to type in. It carries the id its charge will get, so typing turns it into the charge in place.
  const rows = [...d.case.lines, { id: d.freshLineId() }].map((line, index) => ({ line, index }));
  const all = rows.filter(({ line }) => isShown(line.id));
  const [from, to] = stretch(d.sheet, listName, all.length);
  return html`<section class="charges" aria-labelledby="charges-title">
    <h2 id="charges-title">${say('page.charges.title')}</h2>
    <p class="charges-says">${sorted ? inShort(d, sorted) : say(d.case.lines.length ? 'page.charges.says' : 'page.charges.first')}</p>
    ${
      d.filter
        ? html`<p class="charges-filter">${say('page.charges.filtered', { what: say(`page.heap.${d.filter}${d.side === 'landlord' ? '.landlord' : ''}`) })}
          <button type="button" class="link" @click=${() => d.showOnly('')}>${say('page.charges.showAll')}</button></p>`
        : nothing
    }
    ${sameForAll(d)} ${d.case.walkThrough && d.case.lines.length ? seenPart.get(d)?.seenBar(d) : nothing}
    <div class="charges-heads" aria-hidden="true">
      <span>${say('page.charges.head.what')}</span>
      <span>${say('page.charges.head.charged')}</span>
      <span>${say('page.charges.head.fair')}</span>
    </div>
    ${stretches(d.sheet, listName, all.length, () => d.draw())}
    <ol class="ledger" start=${from + 1}>
      ${repeat(
        all.slice(from, to),
        ({ line }) => line.id,
        ({ line, index }) => charge(d, line, index, judged.get(line.id), sorted?.outcomes.get(line.id), longest),
      )}
    </ol>
    ${
      d.blank
        ? nothing
        : html`<p class="charges-add">
            <button type="button" class="tool" @click=${() => addCharge(d)}>${say('page.charges.add')}</button>
            <button type="button" class="link" @click=${() => bringIn(d)}>${say('page.charges.bring')}</button>
          </p>`
    }
    ${sharedRules(d)} ${audit(d)}
  </section>`;
}
