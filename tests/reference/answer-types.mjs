// The page's types of the engine's answers, made from the published schemas.

import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { compile } from 'json-schema-to-typescript';

const folder = new URL('../../engine/rules/schema/', import.meta.url);
const answers = ['assessment', 'letter', 'reading', 'recognition', 'catalogue'];
const titled = (name) => name[0].toUpperCase() + name.slice(1);

/** One document of all answers: every shape once, under the name it has in its schema. */
function together() {
  const $defs = {};
  const own = (name, schema) => {
    const walk = (value) => {
      if (Array.isArray(value)) return value.map(walk);
      if (typeof value !== 'object' || value === null) return value;
      const { $ref, ...rest } = value;
      if (!$ref) return Object.fromEntries(Object.entries(value).map(([key, v]) => [key, walk(v)]));
      const shape = { $ref: `#/$defs/${$ref.split('/').at(-1)}` };
      return Object.keys(rest).length ? { ...rest, allOf: [shape] } : shape;
    };
    for (const [key, def] of Object.entries(schema.$defs ?? {})) $defs[key] = { title: titled(key), ...walk(def) };
    const { $defs: _, $schema: _schema, $id: _id, ...root } = schema;
    if (name !== 'common') $defs[name] = walk(root);
  };
  for (const name of ['common', ...answers]) own(name, JSON.parse(readFileSync(new URL(`${name}.schema.json`, folder), 'utf8')));
  return { title: 'Answers', type: 'object', additionalProperties: false, $defs, properties: Object.fromEntries(answers.map((n) => [n, { $ref: `#/$defs/${n}` }])) };
}

export const answerTypes = () =>
  compile(together(), 'Answers', {
    bannerComment:
      "// What the engine answers, as the schemas of engine/rules/schema say it. Made by tests/reference/check-schemas.mjs --write; do not edit by hand.",
    cwd: fileURLToPath(folder),
    style: { singleQuote: true, printWidth: 120 },
  });

if (process.argv[1] === fileURLToPath(import.meta.url)) process.stdout.write(await answerTypes());
