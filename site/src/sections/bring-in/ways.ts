// The ways to bring a statement in: paste its text, choose a file, take a photo.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { live } from 'lit/directives/live.js';
import { say } from '../../say/wording';
import { canReadPdf } from './source/pdf-library';
import { canReadPictures } from './source/picture-library';
import type { TroubleKind } from './source/trouble';

interface Ways {
  trouble: { kind: TroubleKind; name: string } | null;
  pasted: string;
  type(text: string): void;
  takeText(text: string): void;
  take(files: File[]): void;
}

/** What the files may be: everything on a site, less in the one file. */
const filesHelp = canReadPictures
  ? 'page.bring.files.help'
  : canReadPdf
    ? 'page.bring.files.help.oneFile'
    : 'page.bring.files.help.oneFile.noPdf';

const accepts = `.txt,.csv,.tsv,.eml,.htm,.html,.json,.pdf,text/*,application/pdf${canReadPictures ? ',image/*' : ''}`;

/** A button that opens the browser's own chooser. */
function chooser(
  label: string,
  accept: string,
  several: boolean,
  take: (files: File[]) => void,
  camera = false,
): TemplateResult {
  const open = (): void => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = accept;
    input.multiple = several;
    if (camera) input.capture = 'environment';
    input.addEventListener('change', () => input.files?.length && take([...input.files]));
    input.click();
  };
  return html`<button type="button" class="tool ${camera ? 'bring-camera' : ''}" @click=${open}>${label}</button>`;
}

export function ways(w: Ways): TemplateResult {
  const read = (): void => w.takeText((document.getElementById('bring-text') as HTMLTextAreaElement).value);
  return html`
    ${
      w.trouble
        ? html`<div class="bring-trouble" role="alert">
            <p class="fault">${say(`page.bring.trouble.${w.trouble.kind}`, { name: w.trouble.name || say('page.bring.theText') })}</p>
            <p>${say(`page.bring.next.${w.trouble.kind}`)}</p>
          </div>`
        : nothing
    }
    <div class="bring-ways">
      <div class="bring-paste">
        <label for="bring-text">${say('page.bring.paste')}</label>
        <p class="help" id="bring-text-help">${say('page.bring.paste.help')}</p>
        <textarea
          id="bring-text"
          class="entry bring-text"
          rows="10"
          data-first
          spellcheck="false"
          autocomplete="off"
          aria-describedby="bring-text-help"
          .value=${live(w.pasted)}
          @input=${(e: Event) => w.type((e.target as HTMLTextAreaElement).value)}
          @keydown=${(e: KeyboardEvent) => {
            if (e.key !== 'Enter' || !(e.ctrlKey || e.metaKey)) return;
            e.preventDefault();
            read();
          }}
        ></textarea>
        <p class="bring-tools"><button type="button" class="tool tool-main" @click=${read}>${say('page.bring.read')}</button></p>
      </div>
      <div class="bring-files">
        <h3>${say('page.bring.files')}</h3>
        <p class="help">${say(filesHelp)}</p>
        <p class="bring-tools">
          ${chooser(say('page.bring.choose'), accepts, canReadPictures, w.take)}
          ${canReadPictures ? chooser(say('page.bring.photo'), 'image/*', false, w.take, true) : nothing}
        </p>
        <p class="help">${say('page.bring.drop')}</p>
        <p class="help">${say('page.bring.private')}</p>
      </div>
    </div>`;
}
