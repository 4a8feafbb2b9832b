// The notices of the libraries inside: beside the page and in the single file.
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { describe, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { gunzipSync } from 'node:zlib';

const SITE = path.join(path.dirname(fileURLToPath(import.meta.url)), '../../site');
const read = (file) => fs.readFileSync(path.join(SITE, file), 'utf8');

test('nothing in the page can run the scripts of a PDF: neither the viewer nor its sandbox is there', () => {
  const files = fs.readdirSync(path.join(SITE, 'dist'), { recursive: true }).filter((file) => /\.m?js$|\.wasm$|\.html$/.test(file));
  assert.ok(files.some((file) => /pdf/.test(file)), 'the library that reads PDFs is there');
  for (const file of files) {
    assert.doesNotMatch(file, /sandbox|viewer/i);
    assert.doesNotMatch(fs.readFileSync(path.join(SITE, 'dist', file), 'latin1'), /pdf\.sandbox|quickjs/i, file);
  }
});

describe('notices', () => {
  const notices = read('dist/notices.txt');
  test('every library the page depends on is named with its version and license', () => {
    const lock = JSON.parse(read('package-lock.json'));
    for (const name of Object.keys(JSON.parse(read('package.json')).dependencies)) {
      const { version, license } = lock.packages[`node_modules/${name}`];
      assert.ok(notices.includes(`${name} ${version} (${license})`), name);
    }
    for (const name of ['JSON for Modern C++', 'date', 'Emscripten', 'musl', 'libc++']) assert.ok(notices.includes(name), name);
  });
  test('with the texts: permission of MIT, Apache, ISC, BSD', () => {
    for (const words of ['Permission is hereby granted, free of charge', 'Apache License', 'Permission to use, copy, modify, and/or distribute', 'Redistributions of source code must retain'])
      assert.ok(notices.replace(/\s+/g, ' ').includes(words), words);
  });
  test('the single file holds them too', () => {
    const [, held] = /<script type="application\/gzip" id="notices">([^]*?)<\/script>/.exec(read('dist/wearline.html'));
    const text = gunzipSync(Buffer.from(held, 'base64')).toString();
    assert.ok(text.includes('lit-html') && text.includes('docx'), text.slice(0, 200));
  });
});
