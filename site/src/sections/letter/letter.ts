// A letter the person could send, built by the engine from the case as it stands, open to their own words.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { repeat } from 'lit/directives/repeat.js';
import { live } from 'lit/directives/live.js';
import { keepFile, nameFor } from '../../app/case-files';
import type { Desk } from '../../app/desk';
import { field } from '../../parts/field';
import { fieldOfEvent, fieldOfHow } from '../../parts/fields';
import { language, say } from '../../say/wording';
import {
  asText,
  isOn,
  isStale,
  type Letter,
  ownWords,
  type Paragraph,
  isPrivate,
  toSend,
  withOwnWords,
  withSwitch,
} from '../../case/letter';
import { hasLetter } from './has-letter';
import './letter.css';

function table(p: Paragraph): TemplateResult {
  if (p.rows.every((r) => r.length === 1)) return html`<ul>${p.rows.map((r) => html`<li>${r[0]}</li>`)}</ul>`;
  return html`<table>
    ${p.header.length ? html`<thead><tr>${p.header.map((h) => html`<th scope="col">${h}</th>`)}</tr></thead>` : nothing}
    <tbody>
      ${p.rows.map((r) => html`<tr>${r.map((c, i) => (i === 0 ? html`<th scope="row">${c}</th>` : html`<td data-head=${p.header[i] ?? ''}>${c}</td>`))}</tr>`)}
    </tbody>
  </table>`;
}

/** The words of a paragraph, to be changed where they stand. */
function words(d: Desk, letter: Letter, p: Paragraph): TemplateResult {
  const text = ownWords(letter, p, d.sheet.letter)?.text ?? p.text;
  return html`<span class="grow" data-text=${text}
      ><textarea
        class="paragraph-words"
        rows="1"
        aria-label=${say('page.letter.paragraph', { what: say(`page.letter.role.${p.role}`) })}
        .value=${live(text)}
        @input=${(e: Event) => d.editLetter(withOwnWords(letter, p, d.sheet.letter, (e.target as HTMLTextAreaElement).value))}
      ></textarea></span
    ><p class="paragraph-print">${text}</p>`;
}

function stale(d: Desk, letter: Letter, p: Paragraph): TemplateResult | typeof nothing {
  const own = ownWords(letter, p, d.sheet.letter);
  if (!own) return nothing;
  const take = () => d.editLetter(withOwnWords(letter, p, d.sheet.letter, p.text));
  return html`<p class="own-words">
    ${isStale(own, p) ? html`<strong>${say('page.letter.stale')}</strong> <q>${p.text}</q>` : say('page.letter.own')}
    <button type="button" class="link" @click=${take}>${say('page.letter.takeBack')}</button>
  </p>`;
}

function paragraph(d: Desk, letter: Letter, p: Paragraph): TemplateResult {
  const shown = p.text || ownWords(letter, p, d.sheet.letter);
  const on = isOn(p, d.sheet.letter);
  return html`<div class="paragraph" data-role=${p.role} data-off=${on ? nothing : 'yes'}>
    ${
      p.optional
        ? html`<label class="paragraph-switch"
          ><input
            type="checkbox"
            .checked=${live(on)}
            @change=${(e: Event) => d.editLetter(withSwitch(p, d.sheet.letter, (e.target as HTMLInputElement).checked))}
          /><span class="unseen">${say('page.letter.leaveIn', { what: p.text.slice(0, 60) })}</span></label
        >`
        : nothing
    }
    ${on ? html`${shown ? words(d, letter, p) : nothing}${p.rows.length ? table(p) : nothing}${stale(d, letter, p)}` : html`<p class="paragraph-off">${p.text.slice(0, 90)}…</p>`}
  </div>`;
}

/** The words to send, of the newest letter. */
async function wordsToSend(d: Desk): Promise<string> {
  const letter = await d.settledLetter();
  return letter ? asText(toSend(letter, d.sheet.letter)) : '';
}

async function copy(d: Desk): Promise<void> {
  try {
    await navigator.clipboard.writeText(await wordsToSend(d));
    d.tell(say('page.notice.copied.letter'));
  } catch {
    d.tell(say('page.notice.notCopied'));
  }
}

async function keepText(d: Desk): Promise<void> {
  keepFile(`${nameFor(d)}-letter.txt`, await wordsToSend(d), 'text/plain;charset=utf-8');
}

async function keepWord(d: Desk): Promise<void> {
  const [{ word }, letter] = await Promise.all([import('../../out/word'), d.settledLetter()]);
  if (!letter) return;
  const file = await word(letter.title, toSend(letter, d.sheet.letter), isPrivate(letter));
  keepFile(
    `${nameFor(d)}-letter.docx`,
    file,
    'application/vnd.openxmlformats-officedocument.wordprocessingml.document',
  );
}

/** Why this letter, and the others folded: the ones that fit too first. */
function choice(d: Desk, letter: Letter): TemplateResult {
  const choose = (kind: string) => d.editLetter({ ...d.sheet.letter, kind });
  const others = letter.proposed.filter((p) => p.kind !== letter.kind);
  const proposal = letter.proposed.find((p) => p.kind === letter.kind);
  const label = letter.kinds.find((k) => k.kind === letter.kind)?.label ?? '';
  return html`${label ? html`<p class="letter-kind"><strong>${label}</strong></p>` : nothing}
    ${proposal?.reason ? html`<p class="letter-why">${proposal.reason}</p>` : nothing}
    <details class="fold letter-others">
      <summary>${say('page.letter.others')}</summary>
      ${
        others.length
          ? html`<p class="letter-why">
            ${say('page.letter.fitsToo')}
            ${others.map((p) => html`<button type="button" class="link" title=${p.reason} @click=${() => choose(p.kind)}>${p.label}</button> `)}
          </p>`
          : nothing
      }
      <div class="field">
        <label for="letter-kind">${say('page.letter.kind')}</label>
        <select id="letter-kind" class="entry" @change=${(e: Event) => choose((e.target as HTMLSelectElement).value)}>
          ${letter.kind ? nothing : html`<option value="" selected></option>`}
          ${letter.kinds.map((k) => html`<option value=${k.kind} .selected=${live(k.kind === letter.kind)}>${k.label}</option>`)}
        </select>
      </div>
    </details>`;
}

function tools(d: Desk): TemplateResult {
  const tool = (name: string, act: () => void) =>
    html`<button type="button" class="tool" @click=${act}>${say(`page.letter.${name}`)}</button>`;
  return html`<p class="letter-tools">
    ${tool('copy', () => void copy(d))} ${tool('print', () => d.printOnly('letter'))} ${tool('word', () => void keepWord(d))}
    ${tool('text', () => void keepText(d))}
  </p>`;
}

const readingCopy = (of: NonNullable<Letter['readingCopy']>): TemplateResult =>
  html`<details class="fold letter-copy">
    <summary>${say('page.letter.readingCopy')}</summary>
    <div class="sheet" lang=${of.language}>
      ${of.paragraphs
        .filter((p) => p.included)
        .map(
          (p) =>
            html`<div class="paragraph" data-role=${p.role}>${p.text ? html`<p>${p.text}</p>` : nothing}${p.rows.length ? table(p) : nothing}</div>`,
        )}
    </div>
  </details>`;

const waiting = (): TemplateResult =>
  html`${say('page.letter.waiting')} <a href="#result">${say('page.letter.waiting.go')}</a>`;

/** While it is on its way, or while something typed cannot be read. */
const notYet = (d: Desk): TemplateResult =>
  html`<p class="empty">
    ${d.sheet.faults.length ? waiting() : say('page.sums.loading')}
  </p>`;

/** The heading is there before the letter is, so that who goes there stays there when it comes. */
export function letter(d: Desk): TemplateResult | typeof nothing {
  if (!hasLetter(d)) return nothing;
  const draft = d.letter();
  return html`<section class="letter" aria-labelledby="letter">
    <h2 id="letter" tabindex="-1">${say(`page.letter.title.${d.side}`)}</h2>
    ${draft ? drafted(d, draft) : notYet(d)}
  </section>`;
}

/** One small form for what the letter leaves open. It is kept nowhere: what is typed lasts as long as the page is open. */
function names(d: Desk, draft: Letter): TemplateResult | typeof nothing {
  if (draft.placeholders.length === 0) return nothing;
  const open = draft.placeholders.filter((b) => !b.value).length;
  return html`<details class="fold letter-names">
    <summary>${say('page.letter.names', { n: String(open) })}</summary>
    <p>${say('page.letter.names.kept')}</p>
    ${repeat(
      draft.placeholders,
      (b) => b.id,
      (b) => html`<div class="field">
        <label for="name-${b.id}">${b.label}</label>
        <input
          class="entry"
          id="name-${b.id}"
          autocomplete="off"
          .value=${live(d.names[b.id] ?? '')}
          @change=${(e: Event) => d.nameBlank(b.id, (e.target as HTMLInputElement).value)}
        />
      </div>`,
    )}
  </details>`;
}

/** What to look at before it goes out; of a landlord's paper by what it is about. */
function beforeSending(draft: Letter): TemplateResult | typeof nothing {
  if (draft.warnings.length === 0) return nothing;
  const list = (about: string) => draft.warnings.filter((w) => w.about === about);
  const items = (all: Letter['warnings']) =>
    html`<ul class="letter-warnings">${all.map((w) => html`<li>${w.text}</li>`)}</ul>`;
  if (!['itemized-statement', 'late-statement', 'cover-note'].includes(draft.kind)) return items(draft.warnings);
  return html`<h3>${say('page.letter.before')}</h3>
    ${['day', 'charge', 'proof', 'form'].map((about) =>
      list(about).length ? html`<h4>${say(`page.letter.before.${about}`)}</h4>${items(list(about))}` : nothing,
    )}
    ${list('').length ? items(list('')) : nothing}`;
}

/** The day it went and how: from then on the case knows the day of an answer, and a second letter names the first. */
function sent(d: Desk, draft: Letter): TemplateResult | typeof nothing {
  const day = draft.sentEvent ? fieldOfEvent(d, draft.sentEvent) : undefined;
  if (!day || day.kind !== 'date') return nothing;
  const how = fieldOfHow(d, draft.sentEvent);
  const label = say(draft.kind === 'second-letter' ? 'page.letter.sentFirst' : 'page.letter.sentOn');
  return html`<details class="fold letter-sent" ?open=${d.eventOn(draft.sentEvent) !== undefined}>
    <summary>${say('page.letter.sent')}</summary>
    ${field(d, { ...day, key: 'sent', label, help: say('page.letter.sent.help') })} ${how ? field(d, { ...how, key: 'sent' }) : nothing}
  </details>`;
}

function drafted(d: Desk, draft: Letter): TemplateResult {
  if (!draft.kind) return html`<p class="letter-none">${draft.noLetter?.text ?? ''}</p>${choice(d, draft)}`;
  const whole = d.folds.has('letter');
  const caution = draft.paragraphs.filter((p) => p.role === 'caution');
  // The letter as it was before something was typed that cannot be read: to be seen, not to be sent.
  const held = d.sheet.faults.length > 0;
  return html`<div class="letter-side">
      <p>${held ? waiting() : say('page.letter.says')}</p>
      ${held ? nothing : html`${choice(d, draft)} ${names(d, draft)} ${tools(d)} ${sent(d, draft)}`}
      ${beforeSending(draft)}
    </div>
    <article class="sheet" data-held=${held ? 'yes' : nothing} data-cut=${whole ? nothing : 'yes'} ?inert=${!whole || held} lang=${draft.language} aria-label=${draft.title || say('page.letter.label')}>
      ${repeat(
        draft.paragraphs.filter((p) => p.role !== 'caution'),
        (p) => `${draft.kind}/${p.id}`,
        (p) => paragraph(d, draft, p),
      )}
    </article>
    <p class="letter-whole">
      <button type="button" class="tool" aria-expanded=${whole ? 'true' : 'false'} @click=${() => d.toggleFold('letter')}>
        ${say(whole ? 'page.letter.less' : 'page.letter.whole')}
      </button>
    </p>
    <div class="letter-caution" ?hidden=${!whole}>${caution.map((p) => html`<p>${p.text}</p>`)}</div>
    ${draft.readingCopy && language() !== 'en' ? readingCopy(draft.readingCopy) : nothing}`;
}
