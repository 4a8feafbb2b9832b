// Starts the page: draws at once, then brings the engine in.

import { render } from 'lit/html.js';
import './styles/base.css';
import './styles/print.css';
import { watchForStatements } from './sections/bring-in/door';
import { Desk } from './app/desk';
import { Keeper } from './app/keeper';
import { somebody } from './app/presence';
import { trustOwnScripts } from './app/trusted';
import { letGoOfAll } from './parts/addresses';
import { startEngine } from './engine/start-engine';
import { say, speak } from './say/wording';
import { page } from './page';
import { fetchAhead } from './sections/charges/charge';

if (!__ONE_FILE__) trustOwnScripts();
const desk = new Desk();
const keeper = new Keeper(desk);
const root = document.getElementById('page')!;

let waiting = false;
desk.onChange(() => {
  if (waiting) return;
  waiting = true;
  queueMicrotask(() => {
    waiting = false;
    document.title = say('page.title');
    render(page(desk, keeper), root);
    root.setAttribute('aria-busy', String(desk.judging));
  });
});

window.addEventListener('beforeunload', (e) => {
  // What is still to be written is written now; until it is, and where nothing is kept, leaving is asked.
  const behind = keeper.behind;
  if (behind) void keeper.flush();
  if (behind || (desk.unsaved && !desk.keeping)) e.preventDefault();
});

setInterval(() => desk.newDay(), 60_000);

/** A window that goes out of sight may never come back: what is half typed is saved as if the field were left, and all is written. */
document.addEventListener('visibilitychange', () => {
  if (document.visibilityState !== 'hidden') return desk.newDay();
  const { activeElement } = document;
  if (activeElement instanceof HTMLInputElement) activeElement.dispatchEvent(new Event('change', { bubbles: true }));
  if (keeper.behind) void keeper.flush();
});

window.addEventListener('keydown', (e) => {
  const inText = e.target instanceof HTMLInputElement || e.target instanceof HTMLTextAreaElement;
  if (!(e.ctrlKey || e.metaKey) || inText || e.key.toLowerCase() !== 'z') return;
  e.preventDefault();
  if (e.shiftKey) desk.redo();
  else desk.undo();
});

/** Keeps the files for a visit without a network, once nothing else is waited for: both would share the line. */
function keepFiles(): void {
  if (import.meta.env.PROD && !__ONE_FILE__ && 'serviceWorker' in navigator)
    void navigator.serviceWorker.register('./service-worker.js');
}

watchForStatements(desk);
desk.onClear(letGoOfAll);

desk.draw();
// A browser that is set to Spanish gets Spanish; the button changes it as ever.
const spoken = navigator.language.toLowerCase().startsWith('es')
  ? speak('es')
      .then(() => desk.draw())
      .catch(() => undefined)
  : Promise.resolve();
// Whatever is wrong with what was kept: the engine starts.
void keeper
  .restore()
  .catch(() => undefined)
  .then(() => spoken)
  .then(() => (desk.blank && desk.sheets.length === 1 ? somebody() : undefined))
  .then(() => desk.start(startEngine))
  .then(keepFiles);
// At the first sign of a person.
for (const sign of ['pointerdown', 'keydown']) window.addEventListener(sign, () => void fetchAhead(), { once: true });
