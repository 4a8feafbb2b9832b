// One part of a report under its own heading.
import fs from 'node:fs';

/** Puts `text` under `heading`, in place of what stood there, before the next heading of its kind or at the end. */
export function writePart(file, heading, text) {
  const whole = fs.existsSync(file) ? fs.readFileSync(file, 'utf8') : '# How well statements are read\n';
  const from = whole.indexOf(`${heading}\n`);
  const next = from < 0 ? -1 : whole.indexOf('\n## ', from + heading.length);
  const before = from < 0 ? `${whole.trimEnd()}\n\n` : whole.slice(0, from);
  const after = next < 0 ? '' : `\n${whole.slice(next + 1)}`;
  fs.writeFileSync(file, `${before}${heading}\n\n${text}${after}`);
}
