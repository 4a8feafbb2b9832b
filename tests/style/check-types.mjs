// Combinations of the engine's value types that mean nothing must not compile; beside each stands what does.
// One source holds all that is refused, a line each, another all that is allowed: two runs of the compiler.
import { execFileSync, spawnSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const ENGINE = path.join(path.dirname(fileURLToPath(import.meta.url)), '../../engine');
const COMPILER = process.env.CXX ?? 'c++';

const NO_OPERATOR = /no match for .operator|invalid operands|invalid argument type/;
const NO_BOOL = /(could not|cannot) convert .*(Tri|Charge).* to .*bool|not contextually convertible to 'bool'/;
const NO_CONVERSION = /conversion from .* (to non-scalar type .* requested|to '.*')|no viable conversion|cannot convert|could not convert|cannot initialize/;
const NO_CALL = /cannot convert|could not convert|no matching function|no known conversion|invalid initialization|no viable conversion/;

/** [what is tried, statement that is refused, what the compiler says, statement that is allowed] */
const PAIRS = [
  ['money and a share', 'auto x = money + share;', NO_OPERATOR, 'auto x = money.part(share);'],
  ['money and a number', 'auto x = money + 5;', NO_OPERATOR, 'auto x = money + Money::cents(5);'],
  ['money of a number', 'Money x = 5;', NO_CONVERSION, 'Money x = Money::cents(5);'],
  ['money and a share compared', 'auto x = money < share;', NO_OPERATOR, 'auto x = money < money;'],
  ['months and days', 'auto x = months + days{3};', NO_OPERATOR, 'auto x = months + Months(3);'],
  ['months and a number', 'auto x = months + 3;', NO_OPERATOR, 'auto x = months + Months(3);'],
  ['months and years', 'auto x = months + Years(3);', NO_OPERATOR, 'auto x = months + Years(3).in_months();'],
  ['months compared with years', 'auto x = months < Years(3);', NO_OPERATOR, 'auto x = months < Years(3).in_months();'],
  ['months of a number', 'Months x = 3;', NO_CONVERSION, 'Months x = Months(3);'],
  ['a day and months', 'auto x = day + months;', NO_OPERATOR, 'auto x = add_months(day, months);'],
  ['a day moved by a number of months', 'auto x = add_months(day, 3);', NO_CALL, 'auto x = add_months(day, Months(3));'],
  ['a day moved by days as if they were months', 'auto x = add_months(day, days{3});', NO_CALL, 'auto x = day + days{3};'],
  ['two days', 'auto x = day + day;', NO_OPERATOR, 'auto x = day - day;'],
  ['a life of a number', 'Life x = 60;', NO_CONVERSION, 'Life x = {Months(60)};'],
  ['a life compared with months', 'auto x = life < months;', NO_OPERATOR, 'auto x = life.months < months;'],
  ['an age compared with a life', 'auto x = age < life;', NO_OPERATOR, 'auto x = age < Age::of(life.months);'],
  ['"known" taken for "yes"', 'if (tri) return;', NO_BOOL, 'if (tri.known_yes()) return;'],
  ['a Tri turned round as a bool', 'auto x = !tri;', NO_OPERATOR, 'auto x = tri_not(tri);'],
  ['a Tri and a bool joined', 'auto x = flag && tri;', NO_OPERATOR, 'auto x = tri_and(flag, tri);'],
  ['a bool of a Tri', 'bool x = tri;', NO_CONVERSION, 'bool x = tri.known();'],
  ['a Tri of a number', 'Tri x = 1;', NO_CONVERSION, 'Tri x = flag;'],
  ['a Tri of a pointer', 'Tri x = "yes";', NO_CONVERSION, 'Tri x = Tri::yes;'],
  ['a Tri of what may be absent', 'Tri x = std::optional<bool>();', NO_CONVERSION, 'Tri x = Tri::unknown;'],
  ['a kind of charge of a word', 'ChargeKind x = "damage";', NO_CONVERSION, 'ChargeKind x = value_in(charge_kinds, "damage");'],
  ['a kind of charge compared with a word', 'auto x = kind == "damage";', NO_OPERATOR, 'auto x = kind == ChargeKind::damage;'],
  ['a cause compared with a word', 'auto x = cause == "tenant";', NO_OPERATOR, 'auto x = is_tenants(cause);'],
  ['a remedy compared with a word', 'auto x = remedy == "repair";', NO_OPERATOR, 'auto x = remedy == ChargeRemedy::repair;'],
  ['a kind compared with a remedy', 'auto x = kind == ChargeRemedy::clean;', NO_OPERATOR, 'auto x = kind == ChargeKind::cleaning;'],
  ['a cause in place of a kind', 'ChargeKind x = cause;', NO_CONVERSION, 'ChargeKind x = kind;'],
  ['a remedy of a number', 'ChargeRemedy x = 2;', NO_CONVERSION, 'ChargeRemedy x = remedy;'],
  ['a cause taken for "known"', 'if (cause) return;', NO_BOOL, 'if (cause != ChargeCause::unknown) return;'],
  ['a kind looked up among the causes', 'ChargeKind x = value_in(charge_causes, "pet");', NO_CONVERSION, 'ChargeCause x = value_in(charge_causes, "pet");'],
  ['the matcher of a law given a word', 'auto x = LineMatcher{{"damage"}};', NO_CALL, 'auto x = LineMatcher{{ChargeKind::damage}};'],
  ['a fact in place of an event', 'EventId x = FactId::none;', NO_CONVERSION, 'EventId x = EventId::none;'],
];

const HEAD = `#include "law/pack.h"
#include "law/registry.h"
#include "wear/valuation.h"
#include <optional>
namespace wearline {
struct World { Money money; Share share; Months months{1}; Day day; Life life; Age age; Tri tri; bool flag; ChargeKind kind; ChargeCause cause; ChargeRemedy remedy; };
`;
const line = (statement, i) =>
  `void f${i}(const World& w) { const auto& [money, share, months, day, life, age, tri, flag, kind, cause, remedy] = w; ${statement} }`;

function compile(statements) {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'wearline-types-'));
  const file = path.join(folder, 'types.cpp');
  fs.writeFileSync(file, HEAD + statements.map(line).join('\n') + '\n}\n');
  const made = spawnSync(COMPILER, ['-std=c++20', '-fsyntax-only', '-w', ...errorLimit, `-I${ENGINE}/include`, `-I${ENGINE}/src`, file],
    { encoding: 'utf8', env: { ...process.env, LC_ALL: 'C' }, maxBuffer: 1 << 26 });
  fs.rmSync(folder, { recursive: true });
  const first = HEAD.split('\n').length;
  const errors = statements.map(() => []);
  for (const [, at, text] of made.stderr.matchAll(/types\.cpp:(\d+):\d+: (?:fatal )?error: (.*)/g)) (errors[at - first] ?? (errors.elsewhere ??= [])).push(text);
  return { failed: made.status !== 0, errors, said: made.stderr };
}
const errorLimit = /clang/.test(execFileSync(COMPILER, ['--version'], { encoding: 'utf8' })) ? ['-ferror-limit=0'] : ['-fmax-errors=0'];

const faults = [];
const refused = compile(PAIRS.map(([, statement]) => statement));
if (refused.errors.elsewhere) faults.push(`outside of the statements: ${refused.errors.elsewhere[0]}`);
PAIRS.forEach(([what, statement, says], i) => {
  if (!refused.errors[i].length) faults.push(`${what}: "${statement}" compiles`);
  else if (!refused.errors[i].some((text) => says.test(text))) faults.push(`${what}: "${statement}" is refused for another reason: ${refused.errors[i][0]}`);
});
const allowed = compile(PAIRS.map(([, , , statement]) => statement));
PAIRS.forEach(([what, , , statement], i) => {
  if (allowed.errors[i].length) faults.push(`${what}: "${statement}" should compile: ${allowed.errors[i][0]}`);
});
if (allowed.failed && !faults.length) faults.push(`what is allowed does not compile: ${allowed.said.slice(0, 300)}`);

for (const fault of faults) console.log(fault);
console.log(`${Math.max(0, 2 * PAIRS.length - faults.length)} passed, ${faults.length} failed`);
process.exitCode = faults.length ? 1 : 0;
