// While a file is read: how far it is, and how to stop it. And what has to be asked first.

import { html, nothing, type TemplateResult } from 'lit/html.js';
import { say } from '../../say/wording';
import type { Progress } from './intake';
import { scannedPagesRead } from './source/limits';

function words({ step, page, of, done }: Progress): string {
  const says = say(`page.bring.step.${step}`, { page: page ?? 0, of: of ?? 0 });
  const share = done !== undefined && done > 0 ? ` ${Math.round(done * 100)} %` : '';
  const which = step !== 'page' && page ? `${say('page.bring.step.which', { page, of: of ?? page })} ` : '';
  return `${which}${says}${share}`;
}

/** How much of all the work is done: none of it where that cannot be told. */
function share({ step, page, of, done }: Progress): number | undefined {
  if (step === 'page' && page && of) return page / of;
  const within = {
    opening: undefined,
    page: undefined,
    fetching: 0.1 * (done ?? 0),
    straightening: 0.12,
    reading: 0.15 + 0.75 * (done ?? 0),
    checking: 0.92,
  }[step];
  if (within === undefined) return undefined;
  return page && of ? (page - 1 + within) / of : within;
}

export function working(name: string, p: Progress, stop: () => void): TemplateResult {
  const at = share(p);
  return html`<div class="bring-working">
    <p class="bring-name">${name}</p>
    <progress max="1" value=${at ?? nothing} aria-label=${say('page.bring.progress')}></progress>
    <p class="help" aria-live="polite">${words(p)}</p>
    <p class="bring-tools"><button type="button" class="tool" @click=${stop}>${say('page.bring.stop')}</button></p>
  </div>`;
}

/** A picture or PDF dropped on a case that has its charges: the statement, or something to keep with them. */
export const which = (
  name: string,
  statement: () => void,
  keep: () => void,
): TemplateResult => html`<div class="bring-working">
  <p>${say('page.bring.which', { name })}</p>
  <p class="bring-tools">
    <button type="button" class="tool" @click=${statement}>${say('page.bring.which.statement')}</button>
    <button type="button" class="tool" @click=${keep}>${say('page.bring.which.evidence')}</button>
  </p>
</div>`;

export function locked(
  name: string,
  wrong: boolean,
  open: (password: string) => void,
  back: () => void,
): TemplateResult {
  return html`<form
    class="bring-working"
    @submit=${(e: Event) => {
      e.preventDefault();
      open((document.getElementById('bring-password') as HTMLInputElement).value);
    }}
  >
    <p>${say('page.bring.locked', { name })}</p>
    <div class="field field-wide">
      <label for="bring-password">${say('page.bring.password')}</label>
      <p class="help" id="bring-password-help">${say('page.bring.password.help')}</p>
      <input id="bring-password" class="entry" type="password" autocomplete="off" aria-describedby="bring-password-help${wrong ? ' bring-password-fault' : ''}" aria-invalid=${wrong ? 'true' : nothing} />
      ${wrong ? html`<p class="fault" id="bring-password-fault" role="alert">${say('page.bring.password.wrong')}</p>` : nothing}
    </div>
    <p class="bring-tools">
      <button type="submit" class="tool tool-main">${say('page.bring.unlock')}</button>
      <button type="button" class="tool" @click=${back}>${say('page.bring.otherWay')}</button>
    </p>
  </form>`;
}

export function scan(name: string, pages: number, read: () => void, back: () => void): TemplateResult {
  return html`<div class="bring-working">
    <p>${say('page.bring.scan', { name })}</p>
    <p class="help">${say('page.bring.scan.help')}${pages > scannedPagesRead ? ` ${say('page.bring.scan.some', { read: scannedPagesRead, of: pages })}` : ''}</p>
    <p class="bring-tools">
      <button type="button" class="tool tool-main" @click=${read}>${say('page.bring.scan.read')}</button>
      <button type="button" class="tool" @click=${back}>${say('page.bring.otherWay')}</button>
    </p>
  </div>`;
}
