// Cross checks of the table of useful lives that a schema cannot say. Each check: name and a function (lives, catalogue) -> problems.
import { bothLanguages, sourcesKnownAndUsed } from './catalogue-rules.mjs';

const REGIONS = ['US', 'CA'];
const inside = (place, region) => region === '*' || place === region || place.startsWith(`${region}-`);
const named = (d) => `${d.class}${d.quality ? ` (${d.quality})` : ''} ${d.region}`;
const allDefaults = (lives) => [...lives.defaults, ...lives.qualityDefaults];
const rowsOf = (lives, d) => lives.rows.filter((r) => r.class === d.class);

function namesKnown(lives) {
  const problems = [];
  const entries = [...lives.rows, ...allDefaults(lives), ...lives.methods.flatMap((m) => m.rows ?? []), ...lives.methods.filter((m) => m.class)];
  for (const x of entries) {
    const cls = lives.classes[x.class];
    if (!cls) problems.push(`class ${x.class} is not known`);
    else if (x.quality && !cls.qualities.includes(x.quality)) problems.push(`quality ${x.quality} of ${x.class} is not known`);
  }
  for (const [id, cls] of Object.entries(lives.classes)) if (cls.qualities.join() !== Object.keys(cls.quality ?? {}).join()) problems.push(`${id}: qualities and their labels differ`);
  return problems;
}

function everyClassHasDefault(lives) {
  const once = new Set();
  const problems = allDefaults(lives).flatMap((d) => (once.has(named(d)) ? [`${named(d)}: two defaults`] : (once.add(named(d)), [])));
  for (const id of Object.keys(lives.classes)) if (!once.has(`${id} *`)) problems.push(`${id} has no default for "*"`);
  return problems;
}

// A region with a published row of its own has a default of its own.
function regionsSpeak(lives) {
  return REGIONS.flatMap((region) => Object.keys(lives.classes).filter((id) =>
    lives.rows.some((r) => r.class === id && r.source !== 'practice' && inside(lives.sources[r.source].region, region))
    && !lives.defaults.some((d) => d.class === id && (d.region === region || (d.region === '*' && d.sources.every((s) => inside(lives.sources[s].region, region))))))
    .map((id) => `${id}: ${region} has a published row but no default`));
}

function orderedAndInSpread(lives) {
  return allDefaults(lives).flatMap((d) => {
    const problems = [];
    if (!(d.lowMonths <= d.likelyMonths && d.likelyMonths <= d.highMonths)) problems.push(`${named(d)}: low, likely, high are not in order`);
    const rows = rowsOf(lives, d).filter((r) => inside(lives.sources[r.source].region, d.region));
    const least = Math.min(...rows.map((r) => r.months));
    const most = Math.max(...rows.map((r) => r.monthsHigh ?? r.months));
    const outside = [d.lowMonths, d.likelyMonths, d.highMonths].some((m) => m < least || m > most);
    if (outside && !d.sources.includes('practice')) problems.push(`${named(d)}: ${d.lowMonths}-${d.highMonths} is outside the rows' ${least}-${most} and not marked practice`);
    return problems;
  });
}

function defaultsHaveRows(lives) {
  return allDefaults(lives).flatMap((d) => d.sources.flatMap((s) => [
    ...(rowsOf(lives, d).some((r) => r.source === s) ? [] : [`${named(d)}: ${s} has no row of that class`]),
    ...(!lives.sources[s] || inside(lives.sources[s].region, d.region) ? [] : [`${named(d)}: ${s} is not of that region`])
  ]));
}

function rowsInOrder(lives) {
  const seen = new Set();
  return lives.rows.flatMap((r) => {
    const key = JSON.stringify([r.class, r.quality, r.months, r.monthsHigh, r.source, r.note]);
    const problems = seen.has(key) ? [`row twice: ${key}`] : [];
    seen.add(key);
    if (r.monthsHigh !== null && r.monthsHigh <= r.months) problems.push(`row ${key}: the high end is not above the low end`);
    return problems;
  });
}

function methodsSound(lives) {
  const shape = (m) => [m.bands, m.rows, m.percent].filter((x) => x !== undefined).length;
  const value = ([n, d]) => n / d;
  return [
    ...(lives.methods.filter((m) => m.use === 'default').length === 1 ? [] : ['there must be exactly one default method']),
    ...lives.methods.flatMap((m) => [
      ...(shape(m) > 1 ? [`${m.id}: only one of bands, rows, percent`] : []),
      ...(m.bands ?? []).slice(1).flatMap((b, i) => {
        const before = m.bands[i];
        return (before.underMonths === null || (b.underMonths !== null && b.underMonths <= before.underMonths) || value(b.share) > value(before.share)) ? [`${m.id}: band ${i + 1} is out of order`] : [];
      }),
      ...(m.bands && m.bands.at(-1).underMonths !== null ? [`${m.id}: the last band must be open`] : [])
    ])
  ];
}

function partsAndConditions(lives, catalogue) {
  const natures = ['materials', 'labor', 'repair-labor', 'treatment', 'cleaning', 'disposal', 'delivery', 'tax', 'service-call', 'markup', 'other'];
  const have = lives.parts.map((p) => p.nature);
  const states = new Set(catalogue.atMoveIn.map((s) => s.id));
  const value = ([n, d]) => n / d;
  return [
    ...natures.filter((n) => have.filter((h) => h === n).length !== 1).map((n) => `parts: ${n} must stand once`),
    ...lives.conditions.flatMap((c) => [
      ...(states.has(c.atMoveIn) ? [] : [`conditions: ${c.atMoveIn} is not a state at move-in`]),
      ...(value(c.least) <= value(c.likely) && value(c.likely) <= value(c.most) && value(c.most) <= 1 ? [] : [`conditions: ${c.atMoveIn} is out of order`])
    ]),
    ...(lives.labourPolicy.some((p) => p.region === '*') ? [] : ['labourPolicy has no "*"'])
  ];
}

export const livesRules = [
  ['lives: sources are known and used', sourcesKnownAndUsed],
  ['lives: English and Spanish everywhere', bothLanguages],
  ['lives: classes and qualities are known', namesKnown],
  ['lives: every class has one default for everywhere', everyClassHasDefault],
  ['lives: a region with a published row has its own default', regionsSpeak],
  ['lives: defaults are in order and inside the rows, or marked practice', orderedAndInSpread],
  ['lives: every source of a default has a row, of that region', defaultsHaveRows],
  ['lives: rows are in order and stand once', rowsInOrder],
  ['lives: methods are sound', methodsSound],
  ['lives: parts, conditions and labor are complete', partsAndConditions]
];
