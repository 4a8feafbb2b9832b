// Files the tests of "Bring in the statement" hand over: PDFs of every kind, e-mails, tables, pictures. All invented.
import fs from 'node:fs';
import path from 'node:path';
import PDFDocument from 'pdfkit';
import { ROOT } from './harness.mjs';

/** The labelled corpus (its README says what it holds). */
export const CORPUS = path.join(ROOT, 'tests/reference/corpus');

export const corpusText = (number) => fs.readFileSync(path.join(CORPUS, `statements/${number}.txt`), 'utf8');
export const expectedOf = (number) => JSON.parse(fs.readFileSync(path.join(CORPUS, `statements/${number}.expected.json`), 'utf8'));
export const pdfPath = (number) => path.join(CORPUS, `pdf/${number}.pdf`);
export const scanPath = (number) => path.join(CORPUS, `scans/${number}.png`);

const collected = (document) =>
  new Promise((done) => {
    const parts = [];
    document.on('data', (part) => parts.push(part));
    document.on('end', () => done(Buffer.concat(parts)));
    document.end();
  });

/** A letter-size PDF with one page a list of [description, amount]; `options` go to pdfkit ({ userPassword }). */
export function pdfOf(pages, options = {}) {
  const document = new PDFDocument({ size: 'LETTER', autoFirstPage: false, pdfVersion: '1.7', ...options });
  for (const rows of pages) {
    document.addPage().font('Helvetica').fontSize(11);
    rows.forEach(([words, amount], i) => {
      document.text(words, 72, 90 + i * 18, { lineBreak: false });
      if (amount) document.text(amount, 400, 90 + i * 18, { width: 100, align: 'right', lineBreak: false });
    });
  }
  return collected(document);
}

/** A PDF whose pages are pictures and nothing else. */
export function scannedPdf(pictures) {
  const document = new PDFDocument({ size: 'LETTER', autoFirstPage: false });
  for (const picture of pictures) document.addPage({ margin: 0 }).image(picture, 0, 0, { fit: [612, 792] });
  return collected(document);
}

export const rows = [
  ['Statement of deductions, 12 Sorrel Way', ''],
  ['Carpet cleaning, hall', '85.00'],
  ['Two blinds replaced', '62.50'],
  ['Total', '147.50'],
  ['Deposit', '900.00'],
  ['Refund', '752.50'],
];

/** An e-mail as a mail program keeps it: the words in base64, the table in HTML. */
export function mailOf(html) {
  const body = Buffer.from(html).toString('base64').replace(/.{76}/g, '$&\r\n');
  return [
    'From: office@example.com', 'To: tenant@example.com', 'Subject: Deposit for unit 4', 'Date: Thu, 20 Aug 2026 10:00:00 -0700', 'MIME-Version: 1.0',
    'Content-Type: text/html; charset=utf-8', 'Content-Transfer-Encoding: base64', '', body, '',
  ].join('\r\n');
}

export const mailTable = `<html><body><script>window.ran = true</script><p>Hello,</p><table>
<tr><th>Item</th><th>Charge</th></tr><tr><td>Stove drip pans</td><td>$24.00</td></tr><tr><td>Wall patch, <b>bedroom</b></td><td>$110.00</td></tr>
<tr><td>Total</td><td>$134.00</td></tr></table><img src="https://example.com/track.png"></body></html>`;

/**
 * A picture of the corpus as a phone might take it, drawn in the page: turned by `degrees`, `light` of 1 or less, `scale` smaller, on a dark
 * table, as JPEG. Resolves to a file for a chooser.
 */
export async function asPhoto(page, file, { degrees = 0, light = 1, scale = 1 } = {}) {
  const base64 = await page.evaluate(
    async ([bytes, turn, bright, size]) => {
      const picture = await createImageBitmap(new Blob([Uint8Array.from(atob(bytes), (c) => c.charCodeAt(0))]));
      const angle = (turn * Math.PI) / 180;
      const [c, s] = [Math.abs(Math.cos(angle)), Math.abs(Math.sin(angle))];
      const canvas = document.createElement('canvas');
      canvas.width = Math.round(size * (picture.width * c + picture.height * s));
      canvas.height = Math.round(size * (picture.width * s + picture.height * c));
      const context = canvas.getContext('2d');
      context.fillStyle = '#5b5148';
      context.fillRect(0, 0, canvas.width, canvas.height);
      context.translate(canvas.width / 2, canvas.height / 2);
      context.rotate(angle);
      context.scale(size, size);
      context.imageSmoothingQuality = 'high';
      context.drawImage(picture, -picture.width / 2, -picture.height / 2);
      context.setTransform(1, 0, 0, 1, 0, 0);
      context.fillStyle = `rgb(0 0 0 / ${1 - bright})`;
      context.fillRect(0, 0, canvas.width, canvas.height);
      return canvas.toDataURL('image/jpeg', 0.85).split(',')[1];
    },
    [fs.readFileSync(file).toString('base64'), degrees, light, scale],
  );
  return { name: 'photo.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(base64, 'base64') };
}

/** Opens "Bring in the statement". */
export async function goThere(page) {
  await page.getByRole('button', { name: /^Bring in (the|a) statement$/ }).click();
  await page.locator('#bring-text').waitFor();
}

export async function choose(page, files) {
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.getByRole('button', { name: 'Choose a file' }).click()]);
  await chooser.setFiles(files);
}

export async function paste(page, text) {
  await page.locator('#bring-text').fill(text);
  await page.getByRole('button', { name: 'Read the text' }).click();
}

/** What the review shows: text, amount and whether the sum is marked as in doubt, a row each. */
export const found = (page) =>
  page.locator('.found').evaluateAll((all) =>
    all.map((row) => ({
      text: row.querySelector('textarea').value,
      amount: (row.querySelector('.found-sign') ? '-' : '') + row.querySelector('.found-amount').value.replace(/,/g, ''),
      open: row.dataset.open === 'yes',
    })),
  );

/** The sums the statement states about itself, as the review shows them. */
export const foundFacts = (page) =>
  page.locator('.fact-found').evaluateAll((all) =>
    all.filter((row) => row.querySelector('.found-amount')).map((row) => ({
      at: row.querySelector('.found-amount').id.split('-').pop(),
      amount: row.querySelector('.found-amount').value.replace(/,/g, ''),
      open: row.querySelector('.fault') !== null,
    })),
  );

export const reviewed = (page, timeout = 30_000) => page.locator('.bring-review').waitFor({ timeout });
