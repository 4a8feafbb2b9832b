// Starts the page: draws at once, then brings the engine in.

import { render } from 'lit/html.js';
import './styles/base.css';
import './styles/print.css';
import { openAll } from './app/case-files';
import { Desk } from './app/desk';
import { Keeper } from './app/keeper';
import { startEngine } from './app/start-engine';
import { say } from './app/wording';
import { page } from './page';
import { fetchAhead } from './sections/charges/charge';

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
  });
});

window.addEventListener('beforeunload', (e) => {
  if (desk.unsaved && !desk.keeping) e.preventDefault();
});

window.addEventListener('keydown', (e) => {
  const inText = e.target instanceof HTMLInputElement || e.target instanceof HTMLTextAreaElement;
  if (!(e.ctrlKey || e.metaKey) || inText || e.key.toLowerCase() !== 'z') return;
  e.preventDefault();
  if (e.shiftKey) desk.redo();
  else desk.undo();
});

const holdsFiles = (e: DragEvent): boolean => e.dataTransfer?.types.includes('Files') ?? false;
window.addEventListener('dragover', (e) => {
  if (holdsFiles(e)) e.preventDefault();
});
window.addEventListener('drop', (e) => {
  if (!holdsFiles(e)) return;
  e.preventDefault();
  const files = [...(e.dataTransfer?.files ?? [])];
  const isCase = (f: File) => /\.(json|html?)$/i.test(f.name);
  void openAll(desk, files.filter(isCase));
  const papers = files.filter((f) => !isCase(f));
  if (papers.length) void import('./sections/evidence/evidence').then(({ attach }) => attach(desk, papers));
});

if (import.meta.env.PROD && !__ONE_FILE__ && 'serviceWorker' in navigator) {
  window.addEventListener('load', () => void navigator.serviceWorker.register('./service-worker.js'));
}

desk.draw();
void keeper
  .restore()
  .then(() => desk.start(startEngine))
  .then(fetchAhead);
