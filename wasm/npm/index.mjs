// Wearline's engine as a module: cases in, assessments, letters and readings out. Runs in Node 18 and later, in browsers and in
// workers; the rules a case needs are taken from the package when the case asks for them, each once.
import createEngine from './wearline.mjs';

const inNode = typeof process !== 'undefined' && Boolean(process.versions?.node);

/** The bytes of a file of this package. */
async function bytesOf(name) {
  const at = new URL(name, import.meta.url);
  if (inNode) return (await import('node:fs/promises')).readFile(at);
  const answer = await fetch(at);
  if (!answer.ok) throw new Error(`${at}: ${answer.status}`);
  return new Uint8Array(await answer.arrayBuffer());
}

/** The version of the format where a case does not say its own. */
const formatOf = ({ format = 1 }) => format;

const textOf = (given) => (typeof given === 'string' || given instanceof Uint8Array ? given : JSON.stringify(given));
const today = () => new Date().toLocaleDateString('en-CA');

/** What a case asks for beyond what every case needs. A case that cannot be read asks for nothing; the engine says what is wrong with it. */
function wishesOf(text) {
  try {
    const { jurisdiction, language } = JSON.parse(typeof text === 'string' ? text : new TextDecoder().decode(text));
    return { jurisdiction, language };
  } catch {
    return {};
  }
}

/** An engine that holds what every case needs. */
export async function open() {
  const index = JSON.parse(new TextDecoder().decode(await bytesOf('rules/index.json')));
  const module = await createEngine({ wasmBinary: await bytesOf('wearline.wasm') });
  const held = new Map();

  async function take(file) {
    const { errors } = JSON.parse(module.load(new TextDecoder().decode(await bytesOf(`rules/${file}`))));
    if (errors.length) throw new Error(`${file}: ${errors[0].text}`);
  }
  /** Takes a bundle in once; one that failed may be tried again. */
  function hold(file) {
    if (!file) return Promise.resolve();
    if (!held.has(file)) held.set(file, take(file).catch((error) => { held.delete(file); throw error; }));
    return held.get(file);
  }
  async function prepare({ jurisdiction, language }) {
    const pack = Object.hasOwn(index.packs, jurisdiction ?? '') ? index.packs[jurisdiction] : undefined;
    await hold(pack?.file);
    if (!Object.hasOwn(index.languages, language ?? '')) return;
    await hold(index.languages[language]);
    await hold(pack?.words[language]);
  }
  await hold(index.shared);
  await hold(index.reading);

  return {
    version: module.version(),
    jurisdictions: Object.keys(index.packs),
    async assess(subject, options = {}) {
      const text = textOf(subject);
      await prepare(wishesOf(text));
      return JSON.parse(module.assess(text, options.today ?? today(), formatOf(options)));
    },
    async letter(subject, options = {}) {
      const { today: day = today(), format: _, ...rest } = options;
      const text = textOf(subject);
      await hold(index.letters);
      await prepare(wishesOf(text));
      if (rest.language) await prepare({ ...wishesOf(text), language: rest.language });
      return JSON.parse(module.letter(text, day, JSON.stringify(rest), formatOf(options)));
    },
    async read(statement, options = {}) {
      const { language = 'en' } = options;
      await prepare({ language });
      return JSON.parse(module.readStatement(statement, language, formatOf(options)));
    },
    async catalogue(language = 'en', options = {}) {
      await prepare({ language });
      return JSON.parse(module.catalogue(language, formatOf(options)));
    },
  };
}
