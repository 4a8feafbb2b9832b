// Small changes to C++ as a slip of the hand makes them. Strings, characters and comments are left alone, so are preprocessor lines.

/** The text with everything that is no code blanked out, of the same length. */
export function codeOnly(source) {
  return source.replace(/\/\/[^\n]*|\/\*[\s\S]*?\*\/|R"\w*\([\s\S]*?\)\w*"|"(?:\\.|[^"\\\n])*"|(?<![0-9a-fA-F])'(?:\\.|[^'\\\n])+'|^[ \t]*#[^\n]*/gm, (all) => all.replace(/[^\n]/g, ' '));
}

/** Where the bracket opened at `at` closes, or -1. */
function closing(text, at) {
  let depth = 0;
  for (let i = at; i < text.length; ++i) {
    if (text[i] === '(') depth += 1;
    else if (text[i] === ')' && --depth === 0) return i;
  }
  return -1;
}

const swap = (kind, pattern, becomes) => ({ kind, pattern, becomes });
const SWAPS = [
  swap('comparison', / < /g, [' <= ', ' >= ']), swap('comparison', / <= /g, [' < ', ' > ']), swap('comparison', / > /g, [' >= ', ' <= ']),
  swap('comparison', / >= /g, [' > ', ' < ']), swap('comparison', / == /g, [' != ']), swap('comparison', / != /g, [' == ']),
  swap('logic', / && /g, [' || ']), swap('logic', / \|\| /g, [' && ']), swap('logic', /(?<=[(&|=] ?|return )!(?=[\w(*])/g, ['']),
  swap('constant', /(?<![\w.'{<]|\w\[|, )\b\d{1,6}\b(?![\w.'>])/g, [(n) => `${Number(n) + 1}`]), swap('constant', /(?<=\{)\d{1,6}\b(?![\w.'>])/g, [(n) => `${Number(n) + 1}`]),
  swap('unit', /\bdays\{/g, ['months{']), swap('unit', /\bmonths\{/g, ['years{', 'days{']), swap('unit', /\.earliest\b/g, ['.latest']), swap('unit', /\.latest\b/g, ['.earliest']),
  swap('unit', /\blow\(\)/g, ['high()']), swap('unit', /\bhigh\(\)/g, ['low()']), swap('unit', /std::min\(/g, ['std::max(']), swap('unit', /std::max\(/g, ['std::min(']),
  swap('unit', /\.front\(\)/g, ['.back()']), swap('unit', /\.back\(\)/g, ['.front()']),
  swap('sum', / \+ (?!1\b)/g, [' - ']), swap('sum', / - /g, [' + ']), swap('sum', / \* /g, [' / ']), swap('sum', / \+= /g, [' -= ']), swap('sum', / -= /g, [' += ']),
  swap('answer', /\breturn true;/g, ['return false;']), swap('answer', /\breturn false;/g, ['return true;']),
];

/** Every change that can be made to a source: [{ kind, at, length, to, line }]. */
export function changesOf(source) {
  const code = codeOnly(source);
  const found = [];
  const add = (kind, at, length, to) => found.push({ kind, at, length, to, line: source.slice(0, at).split('\n').length });
  for (const { kind, pattern, becomes } of SWAPS)
    for (const hit of code.matchAll(pattern))
      for (const to of becomes) add(kind, hit.index, hit[0].length, typeof to === 'function' ? to(hit[0]) : to);
  // A branch never taken, and one always taken. Conditions that declare something cannot be wrapped.
  for (const hit of code.matchAll(/\bif \(/g)) {
    const open = hit.index + 3, shut = closing(code, open);
    const condition = shut > 0 ? source.slice(open + 1, shut) : ';';
    if (/;|^(const|auto)\b/.test(condition) || code.slice(Math.max(0, hit.index - 12), hit.index).includes('constexpr')) continue;
    if (/^\w+(::\w+)*[&*]? [*&]?\w+ =/.test(condition)) continue;
    add('branch', open + 1, condition.length, `false && (${condition})`);
    add('branch', open + 1, condition.length, `true || (${condition})`);
  }
  const fixed = new Set();
  source.split('\n').forEach((row, i) => { if (/\b(static_assert|template|using|case \d)\b|constexpr [\w:<>]+ \w+\[\]/.test(row)) fixed.add(i + 1); });
  return found.filter(({ line }) => !fixed.has(line));
}

export const changed = (source, { at, length, to }) => source.slice(0, at) + to + source.slice(at + length);
