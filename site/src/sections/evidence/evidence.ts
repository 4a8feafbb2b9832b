// Photos and papers attached to the charges they belong to, with the day each was taken and what is doubtful about it.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { repeat } from 'lit/directives/repeat.js';
import { live } from 'lit/directives/live.js';
import type { Desk } from '../../app/desk';
import { longDay } from '../../say/show';
import { say } from '../../say/wording';
import { addressOf, letGo } from '../../parts/addresses';
import { type Exhibit, isKindOfExhibit, type Shows, showings, warningOf } from '../../case/exhibit';
import { foldedSection } from '../../parts/fold';
import './evidence.css';

async function exhibitOf(id: number, file: File): Promise<Exhibit> {
  const { momentOf, whenTaken } = await import('../../out/exif');
  const byCamera = file.type.startsWith('image/') ? await whenTaken(file) : undefined;
  const modified = new Date(file.lastModified);
  const byFile = Number.isNaN(modified.getTime()) ? undefined : momentOf(modified);
  const at = byCamera ?? byFile;
  return {
    id,
    name: file.name,
    type: file.type,
    data: file,
    taken: at?.day ?? '',
    ...(at && { time: at.time }),
    dated: byCamera ? 'camera' : byFile ? 'file' : '',
    line: '',
    shows: file.type.startsWith('image/') ? 'move-out' : 'receipt',
    note: '',
  };
}

/** Attaches pictures and PDFs; other kinds of files are refused by name: a web page or drawing could run or load what stands in it. `of`:
 *  what is known of them beforehand. */
export async function attach(d: Desk, files: Iterable<File>, of: Partial<Exhibit> = {}): Promise<void> {
  const sheet = d.sheet;
  let id = Math.max(0, ...sheet.exhibits.map((x) => x.id));
  const all = [...files];
  const fitting = all.filter((f) => isKindOfExhibit(f.type));
  const refused = all.filter((f) => !fitting.includes(f)).map((f) => f.name);
  const added = await Promise.all(fitting.map(async (f) => ({ ...(await exhibitOf(++id, f)), ...of })));
  if (added.length) {
    sheet.exhibits = [...sheet.exhibits, ...added];
    if (!of.thing) d.folds.add('evidence');
    d.exhibitsChanged();
  }
  const says = [
    added.length && say('page.evidence.added', { count: added.length }),
    refused.length && say('page.evidence.refused', { names: refused.slice(0, 5).join(', ') }),
  ];
  if (all.length) d.tell(says.filter(Boolean).join(' '));
}

function change(d: Desk, x: Exhibit, changes: Partial<Exhibit>): void {
  d.sheet.exhibits = d.sheet.exhibits.map((e) => (e.id === x.id ? { ...e, ...changes } : e));
  d.exhibitsChanged();
}

function picture(x: Exhibit): TemplateResult {
  return x.type.startsWith('image/')
    ? html`<a class="exhibit-picture" href=${addressOf(x.data)} target="_blank" aria-label=${say('page.evidence.view', { name: x.name })}
        ><img src=${addressOf(x.data)} alt="" loading="lazy"
      /></a>`
    : html`<a class="exhibit-picture" href=${addressOf(x.data)} target="_blank">${say('page.evidence.paper')}<span class="unseen"> ${x.name}</span></a>`;
}

function exhibit(d: Desk, x: Exhibit, index: number): TemplateResult {
  const warning = warningOf(x, d.case);
  const id = `exhibit-${x.id}`;
  return html`<li class="exhibit">
    ${picture(x)}
    <div class="exhibit-facts">
      <p class="exhibit-name"><strong>${say('page.evidence.number', { n: index + 1 })}</strong> ${x.name}</p>
      <p class="exhibit-day">${x.taken ? say(`page.evidence.dated.${x.dated || 'file'}`, { day: longDay(x.taken) }) : say('page.evidence.noDay')}</p>
      ${warning ? html`<p class="fault">${say(`page.evidence.warning.${warning}`)}</p>` : nothing}
      <div class="exhibit-fields">
        <div class="field">
          <label for="${id}-line">${say('page.evidence.line')}</label>
          <select id="${id}-line" class="entry" @change=${(e: Event) => change(d, x, { line: (e.target as HTMLSelectElement).value })}>
            <option value="" .selected=${live(x.line === '')}>${say('page.evidence.whole')}</option>
            ${d.case.lines.map((l, i) => html`<option value=${l.id} .selected=${live(x.line === l.id)}>${i + 1}. ${l.text ?? ''}</option>`)}
          </select>
        </div>
        <div class="field">
          <label for="${id}-shows">${say('page.evidence.shows')}</label>
          <select id="${id}-shows" class="entry" @change=${(e: Event) => change(d, x, { shows: (e.target as HTMLSelectElement).value as Shows })}>
            ${showings.map((s) => html`<option value=${s} .selected=${live(x.shows === s)}>${say(`page.evidence.shows.${s}`)}</option>`)}
          </select>
        </div>
        <div class="field">
          <label for="${id}-note">${say('page.evidence.note')}</label>
          <input id="${id}-note" class="entry" type="text" .value=${live(x.note)} @input=${(e: Event) => change(d, x, { note: (e.target as HTMLInputElement).value })} />
        </div>
      </div>
      <button
        type="button"
        class="link"
        @click=${() => {
          const sheet = d.sheet;
          sheet.exhibits = sheet.exhibits.filter((e) => e.id !== x.id);
          d.exhibitsChanged();
          const back = (): void => {
            sheet.exhibits = [...sheet.exhibits, x];
            d.hush();
            d.exhibitsChanged();
          };
          letGo(x.data);
          d.tell(say('page.notice.removed', { what: x.name }), [{ says: 'page.tool.undo', act: back }]);
        }}
      >
        ${say('page.evidence.remove')}<span class="unseen"> ${x.name}</span>
      </button>
    </div>
  </li>`;
}

export function evidence(d: Desk): TemplateResult {
  const { length } = d.sheet.exhibits;
  return foldedSection(d, 'evidence', say('page.evidence.title'), () => body(d), length ? `(${length})` : '');
}

function body(d: Desk): TemplateResult {
  const all = d.sheet.exhibits;
  return html`<p>${say('page.evidence.says')}</p>
    <p class="evidence-tools">
      <label class="tool file-tool"
        >${say('page.evidence.attach')}<input
          type="file"
          multiple
          accept="image/png,image/jpeg,image/gif,image/webp,image/avif,image/heic,application/pdf"
          @change=${(e: Event) => {
            const box = e.target as HTMLInputElement;
            void attach(d, [...(box.files ?? [])]).then(() => (box.value = ''));
          }}
      /></label>
      ${all.length ? html`<button type="button" class="tool" @click=${() => d.printOnly('evidence')}>${say('page.evidence.print')}</button>` : nothing}
    </p>
    ${
      all.length
        ? html`<ol class="exhibits">
          ${repeat(
            all,
            (x) => x.id,
            (x, i) => exhibit(d, x, i),
          )}
        </ol>`
        : nothing
    }`;
}
